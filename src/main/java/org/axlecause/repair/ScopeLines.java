package org.axlecause.repair;

import java.math.BigDecimal;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.axlecause.facts.Because;
import org.axlecause.facts.Decision;
import org.axlecause.facts.LineDecision;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.LineStanding;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.Party;
import org.axlecause.facts.Reason;
import org.axlecause.facts.ReportedStep;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.UnaskedLine;
import org.jspecify.annotations.Nullable;

/** Makes the lines of the document: what is proposed, what was decided on it, what was done, and what is new. */
final class ScopeLines {

    private final RepairCatalogue catalogue;
    private final RepairInput input;
    private final Decisions decisions;
    private final Reports reports;
    private final Set<LineKey> done;
    private final MergedLines merged;
    private final @Nullable Pricing pricing;

    ScopeLines(
            RepairCatalogue catalogue,
            RepairInput input,
            Decisions decisions,
            Reports reports,
            @Nullable Pricing pricing) {
        this.catalogue = catalogue;
        this.input = input;
        this.decisions = decisions;
        this.reports = reports;
        this.pricing = pricing;
        this.done = new WorkDone(catalogue).lines(reports.all());
        this.done.removeAll(input.neededAgain());
        this.merged = new MergedLines(catalogue, input.scope(), decisions.byLine(), done);
    }

    /** The lines by place, item and action. A line that proves the work is done once a test has followed all of it. */
    List<ScopeLine> all() {
        Set<LineKey> shown = new TreeSet<>(merged.standing().keySet());
        shown.addAll(decisions.lines());
        done.stream()
                .filter(key -> merged.taker(key) == null && wasProposed(key))
                .forEach(shown::add);
        shown.stream().filter(key -> key.item() == ScopeItem.ROLLER_TEST).forEach(this::settleTest);
        return shown.stream().map(this::line).toList();
    }

    private void settleTest(LineKey test) {
        boolean followed =
                input.tested() ? reports.sinceLastTest().stream().noneMatch(this::changesForce) : done.contains(test);
        boolean workOpen = merged.standing().keySet().stream()
                .filter(LineKey::isChangingForce)
                .anyMatch(key -> isOpenWork(key));
        if (followed && !workOpen) {
            done.add(test);
        } else {
            done.remove(test);
        }
    }

    private boolean changesForce(ReportedStep report) {
        return new WorkDone(catalogue).lines(List.of(report)).stream().anyMatch(LineKey::isChangingForce);
    }

    private boolean isOpenWork(LineKey key) {
        MergedLines.Line proposed = merged.proposed(key);
        LineDecision decided = decisions.on(key);
        boolean agreed = decided != null && decided.decision() == Decision.AGREED;
        boolean must = decided == null && proposed != null && proposed.necessity() == Necessity.REQUIRED;
        return !done.contains(key) && (agreed || must);
    }

    /** Whether a done line is one of its own: proposed, or the very work of a reported step. */
    private boolean wasProposed(LineKey key) {
        return merged.proposed(key) != null
                || reports.all().stream()
                        .flatMap(step -> catalogue.step(step.step()).does().stream()
                                .map(kind -> new LineKey(kind.action(), kind.item(), step.place())))
                        .anyMatch(key::equals);
    }

    private ScopeLine line(LineKey key) {
        MergedLines.Line proposed = merged.proposed(key);
        LineKey taker = merged.taker(key);
        LineDecision decided = decisions.on(key);
        Operation operation = catalogue.operation(key.action(), key.item());
        ScopeExtent extent = proposed == null ? ScopeExtent.of(key.place()) : proposed.extent();
        Measure quantity = operation.quantity(extent, merged.standing().keySet(), input.fluid());
        LineStanding standing = standing(proposed != null, taker != null, decided, done.contains(key));
        Estimate estimate = pricing == null || standing == LineStanding.MERGED_INTO
                ? null
                : pricing.of(
                        operation,
                        quantity.value(),
                        decided == null ? null : decided.alternative(),
                        input.terms().cap(key));
        Necessity necessity = necessity(proposed, decided);
        Change change = change(standing, necessity, quantity, estimate, decided);
        return new ScopeLine(
                key.id(),
                key.action(),
                key.item(),
                key.place(),
                extent,
                quantity,
                necessity,
                standing,
                taker == null ? null : taker.id(),
                proposed == null ? null : proposed.clause(),
                estimate,
                operation.hours(),
                decided == null ? null : StandingDecision.of(decided),
                agreementBy(key, standing, change, operation),
                change,
                standing == LineStanding.DONE ? null : input.terms().awaits(key),
                grounds(key, proposed));
    }

    private List<Reason> grounds(LineKey key, MergedLines.@Nullable Line proposed) {
        Stream<Because> grounds = proposed != null
                ? proposed.grounds().stream()
                : input.unasked().stream()
                        .filter(line -> line.line().equals(key))
                        .map(UnaskedLine::because);
        return grounds.map(input.explain()).toList();
    }

    private static LineStanding standing(
            boolean proposed, boolean merged, @Nullable LineDecision decided, boolean done) {
        if (done) {
            return LineStanding.DONE;
        }
        if (merged) {
            return LineStanding.MERGED_INTO;
        }
        if (!proposed) {
            return LineStanding.NO_LONGER_NEEDED;
        }
        if (decided == null) {
            return LineStanding.PROPOSED;
        }
        return switch (decided.decision()) {
            case AGREED -> LineStanding.AGREED;
            case REFUSED -> LineStanding.REFUSED;
            case LATER -> LineStanding.LATER;
        };
    }

    private static Necessity necessity(MergedLines.@Nullable Line proposed, @Nullable LineDecision decided) {
        if (proposed != null) {
            return proposed.necessity();
        }
        Necessity agreed = decided == null ? null : decided.necessity();
        return agreed == null ? Necessity.OPTIONAL : agreed;
    }

    /** As the policy says; else added parts and time are for the customer to agree to, and what costs neither is not. */
    private @Nullable Party agreementBy(
            LineKey key, LineStanding standing, @Nullable Change change, Operation operation) {
        boolean open = standing == LineStanding.PROPOSED || change == Change.CHANGED;
        if (!open) {
            return null;
        }
        Party consent = input.terms().consent(key);
        if (consent != null) {
            return consent;
        }
        return operation.part() != null || operation.ownLabour() ? Party.CUSTOMER : Party.WORKSHOP;
    }

    private @Nullable Change change(
            LineStanding standing,
            Necessity necessity,
            Measure quantity,
            @Nullable Estimate estimate,
            @Nullable LineDecision decided) {
        if (standing == LineStanding.DONE) {
            return null;
        }
        if (standing == LineStanding.MERGED_INTO || standing == LineStanding.NO_LONGER_NEEDED) {
            return decided != null && decided.decision() == Decision.AGREED ? Change.DROPPED : null;
        }
        if (decided == null) {
            return decisions.customerDecided() ? Change.ADDED : null;
        }
        boolean same = (decided.necessity() == null || decided.necessity() == necessity)
                && (decided.quantity() == null || decided.quantity().compareTo(quantity.value()) == 0)
                && sameGross(estimate, decided);
        return same ? null : Change.CHANGED;
    }

    private static boolean sameGross(@Nullable Estimate estimate, LineDecision decided) {
        Amount gross = estimate == null ? null : estimate.gross();
        BigDecimal shown = decided.estimate();
        return gross == null
                || shown == null
                || (gross.currency().equals(decided.currency())
                        && shown.compareTo(new BigDecimal(gross.amount())) == 0);
    }
}

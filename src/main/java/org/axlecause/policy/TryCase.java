package org.axlecause.policy;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.facts.Axle;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.DepartureRecorded;
import org.axlecause.facts.FindingRecorded;
import org.axlecause.facts.History;
import org.axlecause.facts.LineStanding;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.NeededEvidence;
import org.axlecause.facts.Policy;
import org.axlecause.facts.PolicyClause;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.VehiclePresented;
import org.axlecause.judgement.Judge;
import org.axlecause.judgement.Judgement;
import org.axlecause.judgement.Matter;
import org.axlecause.judgement.PastCases.Past;
import org.axlecause.judgement.ShownCause;
import org.axlecause.repair.Amount;
import org.axlecause.repair.Estimate;
import org.axlecause.repair.Price;
import org.axlecause.repair.ScopeLine;
import org.jspecify.annotations.Nullable;

/** Judges a past case by the policy that judges it and by a draft, without its departures, and tells the difference. */
final class TryCase {

    private static final String NO_CAUSE = "none";

    private final Judge judge;

    TryCase(Judge judge) {
        this.judge = judge;
    }

    /** What the draft would have done to a case. */
    TrialResult tried(Past past, Policy draft) {
        Past open = withoutDepartures(past);
        boolean departed = open.matter().history().entries().size()
                < past.matter().history().entries().size();
        String site = past.matter().site().site();
        try {
            Judge.Compared compared = judge.compare(open.matter(), draft);
            return result(open, draft, departed, compared.before(), compared.after());
        } catch (RuntimeException fault) {
            return TrialResult.of(
                    NO_CAUSE,
                    site,
                    new TrialResult.Tally(1, 0, 0, departed ? 1 : 0, 1, 0, 0, 0, Map.of(), Map.of()),
                    null);
        }
    }

    /** The case with its departures left out; the same object where it has none. */
    static Past withoutDepartures(Past past) {
        Matter matter = past.matter();
        List<Recorded> kept = matter.history().entries().stream()
                .filter(recorded -> !(recorded.entry() instanceof DepartureRecorded))
                .toList();
        return kept.size() == matter.history().entries().size()
                ? past
                : new Past(matter.of(new History(matter.history().reference(), kept)), past.region());
    }

    private static TrialResult result(Past past, Policy draft, boolean departed, Judgement before, Judgement after) {
        Map<String, ScopeLine> old = lines(before);
        Map<String, ScopeLine> now = lines(after);
        List<String> added =
                now.keySet().stream().filter(id -> !old.containsKey(id)).toList();
        List<String> dropped =
                old.keySet().stream().filter(id -> !now.containsKey(id)).toList();
        List<String> otherwise = now.values().stream()
                .flatMap(line -> Stream.ofNullable(old.get(line.id()))
                        .filter(was -> was.necessity() != line.necessity())
                        .map(was -> line.id() + ": " + was.necessity() + ", then " + line.necessity()))
                .toList();
        Map<String, BigDecimal> money = difference(before.estimate(), after.estimate());
        Map<String, BigDecimal> withRecommended = difference(recommended(before), recommended(after));
        boolean changed = !outcome(before).equals(outcome(after));
        boolean lacking = !changed && lacks(past.matter(), draft);
        String cause = before.causes().stream()
                .filter(ShownCause::root)
                .filter(shown -> shown.standing() != CauseStanding.RULED_OUT)
                .findFirst()
                .map(shown -> shown.code().toString())
                .orElse(NO_CAUSE);
        String site = past.matter().site().site();
        String reference = past.matter().history().reference();
        return TrialResult.of(
                cause,
                site,
                new TrialResult.Tally(
                        1,
                        changed ? 1 : 0,
                        lacking ? 1 : 0,
                        departed ? 1 : 0,
                        0,
                        added.size(),
                        dropped.size(),
                        otherwise.size(),
                        money,
                        withRecommended),
                changed
                        ? new TrialResult.Example(reference, site, cause, added, dropped, otherwise, words(money), null)
                        : null);
    }

    private static Map<String, ScopeLine> lines(Judgement judgement) {
        Map<String, ScopeLine> lines = new TreeMap<>();
        judgement.scope().stream()
                .filter(line -> line.standing() != LineStanding.NO_LONGER_NEEDED)
                .filter(line -> line.standing() != LineStanding.MERGED_INTO)
                .forEach(line -> lines.put(line.id(), line));
        return lines;
    }

    /** What counts as the outcome of a case; grounds and their wording do not. */
    private static List<String> outcome(Judgement judgement) {
        List<String> outcome = new ArrayList<>();
        judgement
                .scope()
                .forEach(line -> outcome.add(String.join(
                        " ",
                        line.id(),
                        line.necessity().toString(),
                        line.standing().toString(),
                        line.extent().toString(),
                        String.valueOf(line.agreementBy()),
                        String.valueOf(line.awaits()),
                        String.valueOf(line.estimate()))));
        judgement.deficiencies().stream()
                .map(shown -> shown.code() + " " + shown.place() + " " + shown.severity())
                .sorted()
                .forEach(outcome::add);
        judgement.cautions().forEach(caution -> outcome.add(caution.code().toString()));
        outcome.add(judgement.fitness().level().toString());
        outcome.add(judgement.verification().outcome().toString());
        return outcome;
    }

    /** Whether the draft asks about a quantity otherwise than now, and nobody has measured it on this case. */
    private static boolean lacks(Matter matter, Policy draft) {
        Set<MeasuredQuantity> measured = new HashSet<>();
        Vehicle vehicle = null;
        for (Recorded recorded : matter.history().entries()) {
            if (recorded.entry() instanceof FindingRecorded finding && finding.measurement() != null) {
                measured.add(finding.measurement().quantity());
            } else if (vehicle == null && recorded.entry() instanceof VehiclePresented presented) {
                vehicle = presented.vehicle();
            }
        }
        Vehicle presented = vehicle;
        return presented != null
                && wanted(matter.policy(), draft)
                        .anyMatch(quantity -> !measured.contains(quantity) && has(presented, quantity));
    }

    private static Stream<MeasuredQuantity> wanted(Policy now, Policy draft) {
        Set<String> same = now.clauses().stream().map(TryCase::says).collect(Collectors.toSet());
        return Stream.concat(
                draft.clauses().stream()
                        .filter(clause -> !same.contains(says(clause)))
                        .map(clause -> clause.code().quantity())
                        .filter(Objects::nonNull),
                draft.needed().stream()
                        .filter(needed -> !now.needed().contains(needed))
                        .map(NeededEvidence::quantity)
                        .filter(Objects::nonNull));
    }

    private static boolean has(Vehicle vehicle, MeasuredQuantity quantity) {
        return switch (quantity) {
            case LINING_THICKNESS, DRUM_DIAMETER, DRUM_OVALITY, DRUM_ECCENTRICITY ->
                vehicle.axles().stream().anyMatch(Axle::isDrum);
            case PAD_THICKNESS, DISC_THICKNESS, DISC_THICKNESS_VARIATION, DISC_RUN_OUT ->
                vehicle.axles().stream().anyMatch(Axle::isDisc);
            default -> true;
        };
    }

    private static String says(PolicyClause clause) {
        BigDecimal value = clause.value();
        return clause.code() + " " + (value == null ? null : value.stripTrailingZeros()) + " " + clause.necessity()
                + " " + clause.extent();
    }

    private static @Nullable Estimate recommended(Judgement judgement) {
        return judgement.estimate() == null ? null : judgement.estimate().withRecommended();
    }

    private static Map<String, BigDecimal> difference(@Nullable Estimate before, @Nullable Estimate after) {
        Map<String, BigDecimal> difference = new TreeMap<>(amounts(after));
        amounts(before).forEach((currency, amount) -> difference.merge(currency, amount.negate(), BigDecimal::add));
        difference.values().removeIf(amount -> amount.signum() == 0);
        return difference;
    }

    private static Map<String, BigDecimal> amounts(@Nullable Estimate estimate) {
        Map<String, BigDecimal> amounts = new TreeMap<>();
        if (estimate != null) {
            Stream.concat(
                            Stream.ofNullable(estimate.net()),
                            Objects.requireNonNullElse(estimate.otherCurrencies(), List.<Price>of()).stream()
                                    .map(Price::net))
                    .forEach(net -> add(amounts, net));
        }
        return amounts;
    }

    private static void add(Map<String, BigDecimal> amounts, Amount net) {
        amounts.merge(net.currency(), new BigDecimal(net.amount()), BigDecimal::add);
    }

    private static @Nullable String words(Map<String, BigDecimal> money) {
        return money.isEmpty()
                ? null
                : money.entrySet().stream()
                        .map(entry -> entry.getValue().toPlainString() + " " + entry.getKey())
                        .collect(Collectors.joining(", "));
    }
}

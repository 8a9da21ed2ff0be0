package org.axlecause.judgement;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import org.axlecause.diagnosis.CauseModel;
import org.axlecause.diagnosis.Check;
import org.axlecause.diagnosis.Diagnosis;
import org.axlecause.diagnosis.NextCheck;
import org.axlecause.diagnosis.RankedCause;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Condition;
import org.axlecause.facts.FindingRecorded;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.History;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.Stage;
import org.axlecause.facts.Vehicle;
import org.jspecify.annotations.Nullable;

/** Weighs the causes again as they stood before each look at the vehicle. */
final class FollowProgress {

    private static final int SCALE = 4;

    private final CauseModel model;
    private final OpenedAxles openedAxles;
    private final Function<History, Diagnosis> weigh;
    private final String reference;
    private final Vehicle vehicle;
    private final List<Recorded> entries;

    /**
     * @param weigh what the causes are by the entries so far
     * @param entries standing entries of the case
     */
    FollowProgress(
            CauseModel model,
            OpenedAxles openedAxles,
            Function<History, Diagnosis> weigh,
            String reference,
            Vehicle vehicle,
            List<Recorded> entries) {
        this.model = model;
        this.openedAxles = openedAxles;
        this.weigh = weigh;
        this.reference = reference;
        this.vehicle = vehicle;
        this.entries = entries;
    }

    /** Causes after the arrival test, before anything was looked at; null where no arrival test came first. */
    @Nullable
    List<RankedCause> arrival() {
        int first = nextLook(0);
        return hasArrivalTest(first) ? weighed(first).causes() : null;
    }

    Progress progress() {
        List<RankedCause> arrival = null;
        List<RankedCause> beforeOpening = null;
        Set<CheckCode> asked = EnumSet.noneOf(CheckCode.class);
        List<Progress.MadeCheck> made = new ArrayList<>();
        Diagnosis before = null;
        boolean looked = false;
        int index = nextLook(0);
        while (index < entries.size()) {
            int end = endOfCheck(index);
            before = before == null || !isLook(entries.get(index - 1)) ? weighed(index) : before;
            if (!looked && hasArrivalTest(index)) {
                arrival = before.causes();
            }
            looked = true;
            if (beforeOpening == null && !opened(index) && opened(end)) {
                beforeOpening = before.causes();
            }
            Diagnosis after = weighed(end);
            before.nextChecks().forEach(next -> asked.add(next.check()));
            FindingRecorded finding = finding(index);
            CheckCode check = finding.check();
            if (check != null) {
                made.add(made(check, finding, before, after, index, end));
            }
            before = after;
            index = nextLook(end);
        }
        Diagnosis last = before;
        if (last == null) {
            last = weighed(entries.size());
            arrival = hasArrivalTest(entries.size()) ? last.causes() : null;
            last.nextChecks().forEach(next -> asked.add(next.check()));
        }
        return new Progress(arrival, beforeOpening, asked, made, last.causes());
    }

    private Progress.MadeCheck made(
            CheckCode check, FindingRecorded finding, Diagnosis before, Diagnosis after, int index, int end) {
        NextCheck wanted = before.nextChecks().stream()
                .filter(next -> next.check() == check && next.place().meets(finding.place()))
                .findFirst()
                .orElse(null);
        int minutes = wanted != null
                ? wanted.minutes()
                : model.checks().stream()
                        .filter(known -> known.code() == check)
                        .mapToInt(Check::minutes)
                        .findFirst()
                        .orElse(0);
        boolean answered = entries.subList(index, end).stream()
                .anyMatch(recorded -> ((FindingRecorded) recorded.entry()).condition() != Condition.NOT_ACCESSIBLE);
        return new Progress.MadeCheck(
                check,
                wanted != null,
                answered,
                BigDecimal.valueOf(doubt(before) - doubt(after)).setScale(SCALE, RoundingMode.HALF_EVEN),
                minutes);
    }

    /** Findings of one check about one axle that follow each other are one look. */
    private int endOfCheck(int first) {
        FindingRecorded look = finding(first);
        int end = first + 1;
        while (end < entries.size()
                && isLook(entries.get(end))
                && look.check() != null
                && finding(end).check() == look.check()
                && Objects.equals(finding(end).place().axle(), look.place().axle())) {
            end++;
        }
        return end;
    }

    private int nextLook(int from) {
        int index = from;
        while (index < entries.size() && !isLook(entries.get(index))) {
            index++;
        }
        return index;
    }

    private static boolean isLook(Recorded recorded) {
        return recorded.entry() instanceof FindingRecorded finding && finding.stage() != FindingStage.AFTER_WORK;
    }

    private FindingRecorded finding(int index) {
        return (FindingRecorded) entries.get(index).entry();
    }

    private boolean hasArrivalTest(int end) {
        return entries.subList(0, end).stream()
                .anyMatch(recorded ->
                        recorded.entry() instanceof RollerTestRecorded test && test.stage() == Stage.ARRIVAL);
    }

    private boolean opened(int end) {
        StandingHistory soFar = new StandingHistory(entries.subList(0, end), Set.of(), List.of());
        return !openedAxles.of(vehicle, FirstCall.findings(soFar, vehicle)).isEmpty();
    }

    private Diagnosis weighed(int end) {
        return weigh.apply(new History(reference, entries.subList(0, end)));
    }

    /** Doubt about the causes, bits: the binary entropies of the probabilities that are told. */
    private static double doubt(Diagnosis diagnosis) {
        return diagnosis.causes().stream()
                .filter(cause -> cause.standing() == CauseStanding.SUSPECTED)
                .mapToDouble(cause -> entropy(cause.probability().doubleValue()))
                .sum();
    }

    private static double entropy(double probability) {
        return probability <= 0 || probability >= 1
                ? 0
                : -(probability * Math.log(probability) + (1 - probability) * Math.log(1 - probability)) / Math.log(2);
    }
}

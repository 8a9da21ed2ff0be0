package org.axlecause.casefile;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.diagnosis.RankedCause;
import org.axlecause.facts.Axle;
import org.axlecause.facts.CaseClosed;
import org.axlecause.facts.CaseStatus;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Entry;
import org.axlecause.facts.History;
import org.axlecause.facts.LineStanding;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.Place;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RoadTestRecorded;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.Stage;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.VehiclePresented;
import org.axlecause.facts.VerificationOutcome;
import org.axlecause.facts.WorkReported;
import org.axlecause.judgement.Judgement;
import org.axlecause.judgement.Progress;
import org.axlecause.judgement.ShownCause;
import org.axlecause.repair.Amount;
import org.axlecause.repair.LaterInspection;
import org.axlecause.repair.ScopeLine;
import org.jspecify.annotations.Nullable;

/** Counts a case that has ended; an open case is counted nowhere, and entries that were taken back count for nothing. */
final class CountCase {

    private static final BigDecimal METRES_PER_KILOMETRE = BigDecimal.valueOf(1000);

    private final StatisticsTerms terms;
    private final Judgement judgement;
    private final Progress progress;
    private final List<Recorded> history;
    private final VehiclePresented presented;
    private final ZoneId zone;

    private CountCase(
            StatisticsTerms terms,
            Judgement judgement,
            Progress progress,
            List<Recorded> history,
            VehiclePresented presented,
            ZoneId zone) {
        this.terms = terms;
        this.judgement = judgement;
        this.progress = progress;
        this.history = history;
        this.presented = presented;
        this.zone = zone;
    }

    /** Whether a case of this status has ended: its repair is proved, or it is closed. */
    static boolean isEnded(String status) {
        return status.equals(CaseStatus.VERIFIED.toString()) || status.equals(CaseStatus.CLOSED.toString());
    }

    /** The case as it is counted. */
    static CountedCase of(
            StatisticsTerms terms,
            Judgement judgement,
            Progress progress,
            History history,
            VehiclePresented presented,
            ZoneId zone) {
        return new CountCase(
                        terms, judgement, progress, Histories.standing(history.entries(), Entry.class), presented, zone)
                .counted();
    }

    private CountedCase counted() {
        List<CountedCause> causes = causes();
        List<Tally> tallies = new ArrayList<>();
        tallies.add(Tally.of(Countable.aCase()));
        outcomes(causes).forEach(code -> tallies.add(Tally.of(Countable.outcome(code))));
        tallies.addAll(causeTallies(causes));
        tallies.addAll(pairs(causes));
        tallies.addAll(lines());
        tallies.addAll(checks());
        tallies.addAll(calibration("arrival", progress.arrival(), causes));
        tallies.addAll(calibration("before-opening", progress.beforeOpening(), causes));
        tallies.sort(Comparator.comparing(Tally::what)
                .thenComparing(Tally::amount, Comparator.nullsFirst(Comparator.naturalOrder())));
        CountedCase.Verified verified = verified();
        return new CountedCase(
                cohort(),
                tallies,
                judgement.opened(),
                axles(causes),
                presented.vehicle().identity(),
                presented.previousCase(),
                verified,
                verified == null ? List.of() : repaired());
    }

    private CountedCase.Cohort cohort() {
        Vehicle vehicle = presented.vehicle();
        LocalDate since = vehicle.firstUsed() == null ? vehicle.firstRegistered() : vehicle.firstUsed();
        long years = since == null ? -1 : ChronoUnit.YEARS.between(since, judgement.openedDay());
        Judgement.JudgedBy regime = judgement.regime();
        return new CountedCase.Cohort(
                presented.site(),
                judgement.openedDay(),
                known(vehicle.make()),
                known(vehicle.model()),
                known(vehicle.category()),
                layout(vehicle),
                terms.ageBand(years < 0 ? null : BigDecimal.valueOf(years)),
                terms.odometerBand(
                        vehicle.odometer() == null ? null : vehicle.odometer().divide(METRES_PER_KILOMETRE)),
                known(regime == null ? null : regime.code()));
    }

    private static String layout(Vehicle vehicle) {
        String layout = vehicle.axles().stream()
                .sorted(Comparator.comparing(Axle::number))
                .map(axle -> Objects.toString(axle.brake(), StatisticsTerms.UNKNOWN))
                .collect(Collectors.joining("+"));
        return known(layout);
    }

    private static String known(@Nullable String text) {
        return text == null || text.isBlank() ? StatisticsTerms.UNKNOWN : text.strip();
    }

    private List<String> outcomes(List<CountedCause> causes) {
        List<String> outcomes = new ArrayList<>();
        outcomes.add(causes.isEmpty() ? Countable.UNDETERMINED : "determined");
        VerificationOutcome outcome = judgement.verification().outcome();
        if (outcome != VerificationOutcome.NOT_TESTED) {
            outcomes.add("tested");
            outcomes.add(outcome.toString());
            if (outcome == VerificationOutcome.VERIFIED && rounds() == 1) {
                outcomes.add("first-time-cure");
            }
        }
        LaterInspection inspection = judgement.verification().inspection();
        if (inspection != null) {
            outcomes.add("official-" + inspection.result());
        }
        standing(CaseClosed.class)
                .reduce((earlier, later) -> later)
                .ifPresent(closed -> outcomes.add("closed-" + ((CaseClosed) closed.entry()).outcome()));
        return outcomes;
    }

    /** Final tests, those with no work between them counted once. */
    private int rounds() {
        int rounds = 0;
        boolean worked = true;
        for (Recorded recorded : history) {
            if (isFinalTest(recorded)) {
                rounds += worked ? 1 : 0;
                worked = false;
            } else if (recorded.entry() instanceof WorkReported) {
                worked = true;
            }
        }
        return rounds;
    }

    private static boolean isFinalTest(Recorded recorded) {
        return (recorded.entry() instanceof RollerTestRecorded roller && roller.stage() == Stage.FINAL)
                || (recorded.entry() instanceof RoadTestRecorded road && road.stage() == Stage.FINAL);
    }

    private Stream<Recorded> standing(Class<?> type) {
        return history.stream().filter(recorded -> type.isInstance(recorded.entry()));
    }

    /** Causes that a finding has proved or the technician has confirmed, each at its place once. */
    private List<CountedCause> causes() {
        List<CountedCause> causes = new ArrayList<>();
        for (ShownCause cause : judgement.causes()) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                add(causes, cause.code(), cause.place(), cause.root());
            }
        }
        for (RankedCause cause : progress.last()) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                add(causes, cause.code(), cause.place(), cause.root());
            }
        }
        standing(CaseClosed.class)
                .reduce((earlier, later) -> later)
                .ifPresent(closed -> ((CaseClosed) closed.entry())
                        .confirmedCauses()
                        .forEach(judged ->
                                add(causes, judged.code(), judged.place(), rootByName(judged.code(), judged.place()))));
        return causes;
    }

    private static void add(List<CountedCause> causes, CauseCode code, Place place, boolean root) {
        if (causes.stream().noneMatch(known -> known.code == code && known.place.meets(place))) {
            causes.add(new CountedCause(code, place, root));
        }
    }

    private boolean rootByName(CauseCode code, Place place) {
        return judgement.causes().stream()
                .filter(cause -> cause.standing() != CauseStanding.RULED_OUT)
                .filter(cause -> cause.code() == code && cause.place().meets(place))
                .findFirst()
                .map(ShownCause::root)
                .orElse(true);
    }

    private static List<Tally> causeTallies(List<CountedCause> causes) {
        if (causes.isEmpty()) {
            return List.of(Tally.of(Countable.cause(Countable.UNDETERMINED, 0, "", "", CauseMarks.ALL)));
        }
        return CauseMarks.marked(causes.stream()
                        .map(cause -> Countable.cause(
                                cause.code.toString(),
                                cause.place.axle() == null ? 0 : cause.place.axle(),
                                cause.place.side() == null
                                        ? ""
                                        : cause.place.side().toString(),
                                cause.root ? Countable.ROOT : Countable.CONTRIBUTING,
                                0))
                        .toList())
                .stream()
                .map(Tally::of)
                .toList();
    }

    private static List<Tally> pairs(List<CountedCause> causes) {
        List<String> codes = causes.stream()
                .map(cause -> cause.code.toString())
                .distinct()
                .sorted()
                .toList();
        List<Tally> pairs = new ArrayList<>();
        for (int one = 0; one < codes.size(); one++) {
            for (int other = one + 1; other < codes.size(); other++) {
                pairs.add(Tally.of(Countable.pair(codes.get(one), codes.get(other))));
            }
        }
        return pairs;
    }

    private List<Tally> lines() {
        List<Tally> tallies = new ArrayList<>();
        Set<ScopeItem> seen = new HashSet<>();
        judgement.scope().stream()
                .filter(line -> line.standing() != LineStanding.MERGED_INTO)
                .filter(line -> line.decision() != null || line.standing() != LineStanding.NO_LONGER_NEEDED)
                .sorted(Comparator.comparing(ScopeLine::id))
                .forEach(line -> {
                    Amount net =
                            line.estimate() == null ? null : line.estimate().net();
                    tallies.add(new Tally(
                            new Countable(
                                    Countable.LINE,
                                    line.item().toString(),
                                    line.action().toString(),
                                    line.necessity().toString(),
                                    line.decision() == null
                                            ? "undecided"
                                            : line.decision().decision().toString(),
                                    line.place().axle() == null
                                            ? 0
                                            : line.place().axle(),
                                    "",
                                    net == null ? "" : net.currency(),
                                    seen.add(line.item()) ? 1 : 0,
                                    line.standing() == LineStanding.DONE ? 1 : 0),
                            net == null ? null : new BigDecimal(net.amount())));
                });
        return tallies;
    }

    private List<Tally> checks() {
        List<Tally> tallies = new ArrayList<>();
        Set<CheckCode> made = new HashSet<>();
        for (Progress.MadeCheck check : progress.made()) {
            made.add(check.check());
            tallies.add(new Tally(
                    Countable.told(
                            Countable.CHECK,
                            check.check().toString(),
                            check.asked() ? "asked" : "unasked",
                            check.answered() ? "answered" : "not-accessible",
                            0),
                    check.told()));
            tallies.add(new Tally(
                    Countable.told(Countable.MINUTES, check.check().toString(), "", "", 0),
                    BigDecimal.valueOf(check.minutes())));
        }
        progress.asked().stream()
                .filter(check -> !made.contains(check))
                .forEach(check -> tallies.add(
                        Tally.of(Countable.told(Countable.CHECK, check.toString(), "asked", "not-made", 0))));
        return tallies;
    }

    private List<Tally> calibration(String moment, @Nullable List<RankedCause> told, List<CountedCause> causes) {
        if (told == null) {
            return List.of();
        }
        List<Tally> tallies = new ArrayList<>();
        tallies.add(Tally.of(Countable.told(
                Countable.TOLD, "", moment, causes.isEmpty() ? Countable.UNDETERMINED : "determined", 0)));
        if (causes.isEmpty()) {
            return List.copyOf(tallies);
        }
        List<RankedCause> named = told.stream()
                .filter(cause -> cause.standing() != CauseStanding.RULED_OUT)
                .toList();
        for (RankedCause cause : named) {
            boolean confirmed =
                    causes.stream().anyMatch(found -> found.code == cause.code() && found.place.meets(cause.place()));
            String became = confirmed ? "confirmed" : "not-confirmed";
            String code = cause.code().toString();
            tallies.add(new Tally(
                    Countable.told(Countable.CALIBRATION, code, moment, became, cause.percent()), cause.probability()));
        }
        for (CountedCause cause : causes) {
            if (named.stream()
                    .noneMatch(said -> said.code() == cause.code && said.place().meets(cause.place))) {
                tallies.add(
                        Tally.of(Countable.told(Countable.CALIBRATION, cause.code.toString(), moment, "not-named", 0)));
            }
        }
        return List.copyOf(tallies);
    }

    private CountedCase.@Nullable Verified verified() {
        if (judgement.verification().outcome() != VerificationOutcome.VERIFIED) {
            return null;
        }
        OffsetDateTime time = history.stream()
                .filter(CountCase::isFinalTest)
                .reduce((earlier, later) -> later)
                .map(Recorded::time)
                .orElse(null);
        return time == null
                ? null
                : new CountedCase.Verified(time, time.atZoneSameInstant(zone).toLocalDate());
    }

    private List<CountedCase.RepairedAxle> repaired() {
        Map<Integer, Set<String>> items = new TreeMap<>();
        for (ScopeLine line : judgement.scope()) {
            Integer axle = line.place().axle();
            if (axle != null && line.standing() == LineStanding.DONE && line.item() != ScopeItem.ROLLER_TEST) {
                items.computeIfAbsent(axle, number -> new TreeSet<>())
                        .add(line.item().toString());
            }
        }
        return items.entrySet().stream()
                .map(repaired -> new CountedCase.RepairedAxle(repaired.getKey(), List.copyOf(repaired.getValue())))
                .toList();
    }

    private List<Integer> axles(List<CountedCause> causes) {
        return Stream.concat(
                        causes.stream().map(cause -> cause.place.axle()),
                        judgement.scope().stream()
                                .filter(line -> line.necessity() == Necessity.REQUIRED
                                        && line.item() != ScopeItem.ROLLER_TEST
                                        && line.standing() != LineStanding.NO_LONGER_NEEDED)
                                .map(line -> line.place().axle()))
                .flatMap(Stream::ofNullable)
                .distinct()
                .sorted()
                .toList();
    }

    private record CountedCause(CauseCode code, Place place, boolean root) {}
}

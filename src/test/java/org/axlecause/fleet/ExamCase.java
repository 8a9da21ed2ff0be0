package org.axlecause.fleet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Entry;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.FindingRecorded;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.PartState;
import org.axlecause.facts.Place;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.VehicleLayout;
import org.axlecause.judgement.Judgement;
import org.axlecause.judgement.ShownCause;
import org.axlecause.repair.ScopeLine;

/**
 * How the judge fared in one invented case.
 *
 * @param drawn the case
 * @param afterRollers judgement after the roller tests alone
 * @param atStop judgement when it asked no more
 * @param asked checks that it asked for, in order
 */
record ExamCase(DrawnCase drawn, Judgement afterRollers, Judgement atStop, List<Asked> asked) {

    private static final double LIKELIER_THAN_NOT = 0.5;

    /**
     * A check that was asked for.
     *
     * @param check the check
     * @param place where
     * @param lookingOver whether only because the axle is opened
     * @param wrong whether its answer was wrong
     * @param answers what came out
     */
    record Asked(CheckCode check, Place place, boolean lookingOver, boolean wrong, List<Entry> answers) {}

    /** Whether a cause is the fault. */
    static boolean is(ShownCause cause, Fault fault) {
        return cause.code() == fault.code()
                && fault.places().stream()
                        .anyMatch(place -> place.wheel().equals(cause.place().wheel()));
    }

    boolean isTrue(ShownCause cause) {
        return drawn.faults().stream().anyMatch(fault -> is(cause, fault));
    }

    /** Whether the cause is there, drawn or brought about by what was drawn. */
    boolean isThere(ShownCause cause) {
        return isTrue(cause) || drawn.brought().stream().anyMatch(fault -> is(cause, fault));
    }

    boolean single() {
        return drawn.faults().size() == 1;
    }

    static Stream<ShownCause> open(Judgement judgement) {
        return judgement.causes().stream().filter(cause -> cause.standing() != CauseStanding.RULED_OUT);
    }

    /** Whether a fault is among the first three after the roller tests alone. */
    boolean amongFirstThree() {
        return open(afterRollers).limit(3).anyMatch(this::isTrue);
    }

    boolean firstIsRight() {
        return open(atStop).limit(1).anyMatch(this::isTrue);
    }

    boolean found(Fault fault) {
        return open(atStop)
                .anyMatch(cause -> is(cause, fault)
                        && (cause.standing() == CauseStanding.CONFIRMED
                                || cause.probability().doubleValue() > LIKELIER_THAN_NOT));
    }

    boolean allFound() {
        return drawn.faults().stream().allMatch(this::found);
    }

    long checksBeyondLookingOver() {
        return asked.stream().filter(one -> !one.lookingOver()).count();
    }

    boolean anyWrong() {
        return asked.stream().anyMatch(Asked::wrong);
    }

    /** Parts called faulty that are sound. */
    List<ShownCause> soundPartsConfirmed() {
        return falselyConfirmed().stream()
                .filter(cause -> cause.code() != CauseCode.TEST_NOT_VALID)
                .toList();
    }

    /** Causes called confirmed that are not there, a doubted test included. */
    List<ShownCause> falselyConfirmed() {
        return atStop.causes().stream()
                .filter(cause -> cause.standing() == CauseStanding.CONFIRMED && !isThere(cause))
                .toList();
    }

    /** What the scope at the stop lacks of the faults that are there, by fault, and what it requires for none of them. */
    ScopeErrors scopeErrors() {
        Vehicle vehicle = drawn.presented().vehicle();
        ExpectedRepair expected = new ExpectedRepair(vehicle, new VehicleLayout(vehicle, atStop.openedDay()));
        Set<LineKey> required = atStop.scope().stream()
                .filter(line -> line.necessity() == Necessity.REQUIRED)
                .map(ScopeLine::key)
                .collect(Collectors.toCollection(TreeSet::new));
        Map<Fault, List<LineKey>> missing = new LinkedHashMap<>();
        List<LineKey> due = new ArrayList<>();
        for (Fault fault : drawn.faults()) {
            List<LineKey> own = linesOf(fault, expected);
            due.addAll(own);
            missing.put(
                    fault,
                    expected.merged(expected.closed(own)).stream()
                            .filter(line ->
                                    !required.contains(line) && !DrawnRepairsTest.isTaken(line, required, expected))
                            .toList());
        }
        drawn.brought().forEach(fault -> due.addAll(linesOf(fault, expected)));
        List<PartState> states = states();
        required.stream()
                .filter(line -> DrawnRepairsTest.isOfAFaultyPart(line, states))
                .forEach(due::add);
        Set<LineKey> may = expected.closed(due);
        return new ScopeErrors(
                missing, required.stream().filter(line -> !may.contains(line)).toList());
    }

    /**
     * Where the scope departs from what the faults call for.
     *
     * @param missing by fault the required lines that are not there
     * @param withoutCause required lines that neither a fault nor a faulty part calls for
     */
    record ScopeErrors(Map<Fault, List<LineKey>> missing, List<LineKey> withoutCause) {

        boolean lacks() {
            return missing.values().stream().anyMatch(lines -> !lines.isEmpty());
        }

        int missing(CauseCode code) {
            return missing.entrySet().stream()
                    .filter(entry -> entry.getKey().code() == code)
                    .mapToInt(entry -> entry.getValue().size())
                    .sum();
        }
    }

    private static List<LineKey> linesOf(Fault fault, ExpectedRepair expected) {
        return fault.places().stream()
                .flatMap(place -> expected.of(fault.code(), place).stream())
                .toList();
    }

    private List<PartState> states() {
        List<PartState> states = new ArrayList<>();
        for (Asked one : asked) {
            for (Entry answer : one.answers()) {
                if (answer instanceof FindingRecorded finding) {
                    states.add(DrawnRepairsTest.state(new EntryId("/exam", "s" + states.size()), finding));
                }
            }
        }
        return states;
    }

    String told() {
        StringBuilder told = new StringBuilder("seed " + drawn.seed() + ": " + drawn.faults() + ", "
                + drawn.presented().complaints() + "\n    rollers: " + top(afterRollers) + "\n    stop: "
                + top(atStop) + "\n    asked: " + Exam.path(asked));
        told.append("\n    symptoms: ");
        afterRollers
                .symptoms()
                .forEach(symptom -> told.append(symptom.code())
                        .append('@')
                        .append(symptom.place().id())
                        .append(' '));
        return told.toString();
    }

    private static String top(Judgement judgement) {
        return String.join(
                ", ",
                open(judgement)
                        .limit(5)
                        .map(cause -> cause.code() + "@" + cause.place().id() + " " + cause.probability()
                                + (cause.standing() == CauseStanding.CONFIRMED ? "!" : ""))
                        .toList());
    }

    /** The probabilities of all causes named, with whether each is there. */
    static Stream<Map.Entry<Double, Boolean>> beliefs(ExamCase one, Judgement judgement) {
        return open(judgement).map(cause -> Map.entry(cause.probability().doubleValue(), one.isThere(cause)));
    }
}

package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.facts.Axle;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.Drive;
import org.axlecause.facts.Place;
import org.axlecause.facts.Vehicle;
import org.axlecause.shared.Recent;
import org.jspecify.annotations.Nullable;

/**
 * What could be wrong on every vehicle of one layout, where each cause would show, what it makes the scope, and what
 * each check there could tell: all that is the same for such vehicles, worked out once. Causes are numbered in their
 * order, and so are signs.
 */
final class Possibilities {

    /** Chains with weights of their own times the ages of brakes; each keeps one number for each candidate. */
    private static final int MOST_LEARNED = 32;

    private final List<Candidate> candidates;
    private final Map<Candidate, Integer> numbers = new HashMap<>();
    private final List<List<Effect>> effects = new ArrayList<>();
    private final List<List<Showing>> showing = new ArrayList<>();
    private final List<BitSet> scopeMarks;
    private final List<CheckPlace> checks;
    private final IdentityHashMap<CheckPlace, int[]> checkSigns = new IdentityHashMap<>();
    private final Signs signs;
    private final double[] leakMissing;
    private final CauseModel model;
    private final Layout layout;
    private final Map<Priors.Age, Priors> priorsOfBook;
    private final Recent<Learned, Priors> priorsOfLearned = new Recent<>(MOST_LEARNED);
    private final Ties ties;
    private final Steps steps;

    Possibilities(CauseModel model, Kind kind) {
        this.model = model;
        layout = new Layout(kind.vehicle());
        candidates = candidates(model, layout);
        candidates.forEach(candidate -> numbers.put(candidate, numbers.size()));
        checks = checks(model, layout, candidates);
        List<List<Shown>> shown = candidates.stream()
                .map(candidate -> shown(model, layout, model.cause(candidate.code()), candidate.place()))
                .toList();
        TreeSet<Sign> all = new TreeSet<>();
        shown.forEach(links -> links.forEach(link -> all.addAll(link.signs())));
        checks.forEach(check -> all.addAll(check.signs()));
        signs = new Signs(all);
        leakMissing = new double[signs.count()];
        for (int sign = 0; sign < leakMissing.length; sign++) {
            leakMissing[sign] = 1 - model.leak(signs.get(sign));
        }
        checks.forEach(check -> checkSigns.put(check, signs.numbersOf(check.signs())));
        for (int sign = 0; sign < signs.count(); sign++) {
            showing.add(new ArrayList<>());
        }
        for (int candidate = 0; candidate < candidates.size(); candidate++) {
            effects.add(effects(model.cause(candidates.get(candidate).code()), shown.get(candidate)));
            for (Effect effect : effects.get(candidate)) {
                for (int sign : effect.signs) {
                    showing.get(sign).add(new Showing(candidate, effect));
                }
            }
        }
        scopeMarks = ScopeDoubt.numberedMarks(model, layout, candidates);
        priorsOfBook = Stream.of(true, false)
                .flatMap(oldDrums -> Stream.of(true, false).map(oldDiscs -> new Priors.Age(oldDrums, oldDiscs)))
                .collect(Collectors.toUnmodifiableMap(Function.identity(), age -> priorsMade(CauseWeights.BOOK, age)));
        ties = new Ties(model, candidates, numbers);
        steps = new Steps(model, layout, this);
    }

    private static List<Candidate> candidates(CauseModel model, Layout layout) {
        List<Candidate> found = new ArrayList<>();
        for (Cause cause : model.causes()) {
            for (Place place : layout.places(cause.level())) {
                Axle axle = layout.axleOf(place);
                if (axle == null ? fitsVehicle(cause, layout.vehicle()) : cause.fits(layout.vehicle(), axle)) {
                    found.add(new Candidate(cause.code(), place));
                }
            }
        }
        Collections.sort(found);
        return List.copyOf(found);
    }

    private static boolean fitsVehicle(Cause cause, Vehicle vehicle) {
        return cause.fits(vehicle) && vehicle.axles().stream().anyMatch(axle -> axle.brake() != null);
    }

    private static List<CheckPlace> checks(CauseModel model, Layout layout, List<Candidate> candidates) {
        Answers answers = new Answers(model, layout);
        List<CheckPlace> checks = new ArrayList<>();
        for (Check check : model.checks()) {
            for (Place place : layout.places(check.level())) {
                if (CheckPlace.fits(layout, check, place)) {
                    checks.add(CheckPlace.of(model, layout, answers, check, place, candidates));
                }
            }
        }
        return checks;
    }

    private static List<Shown> shown(CauseModel model, Layout layout, Cause cause, Place from) {
        List<Shown> shown = new ArrayList<>();
        for (Link link : cause.links()) {
            if (link.sharedFrictionOnly() && !layout.parksOnServiceFriction(from)) {
                continue;
            }
            Level level = link.finding()
                    ? model.finding(link.evidence()).level()
                    : model.symptomOf(link.evidence()).level();
            shown.add(new Shown(
                    link.strength(),
                    layout.reached(from, link.reach(), level).stream()
                            .map(place -> new Sign(link.evidence(), link.finding(), place))
                            .toList(),
                    link.firstRunOnly()));
        }
        return shown;
    }

    private List<Effect> effects(Cause cause, List<Shown> shown) {
        List<Effect> numbered = new ArrayList<>();
        for (Shown link : shown) {
            boolean asOne = link.signs().size() > 1 && (cause.alike() || cause.level() != Level.AXLE);
            numbered.add(new Effect(link.strength(), asOne, link.firstRunOnly(), signs.numbersOf(link.signs())));
        }
        return numbered;
    }

    /** Every cause at every place where the layout allows it, sorted by code and place. */
    List<Candidate> candidates() {
        return candidates;
    }

    /** Number of a candidate; none for a cause that can't be at that place. */
    int numberOf(Candidate candidate) {
        return numbers.getOrDefault(candidate, Signs.NONE);
    }

    /** What a candidate would show, in the order of its links. */
    List<Effect> effectsOf(int candidate) {
        return effects.get(candidate);
    }

    Signs signs() {
        return signs;
    }

    /** The chance that nothing outside the causes shows a sign. */
    double leakMissing(int sign) {
        return leakMissing[sign];
    }

    /** The candidates that would show a sign, sorted. */
    List<Showing> showing(int sign) {
        return showing.get(sign);
    }

    /** Numbers of what a candidate makes the scope. */
    BitSet scopeMarksOf(int candidate) {
        return scopeMarks.get(candidate);
    }

    /** Numbers of what a check there could tell of, sorted. */
    int[] numbersOf(CheckPlace check) {
        int[] known = checkSigns.get(check);
        return known == null ? signs.numbersOf(check.signs()) : known;
    }

    /** Every check at every place where it can be made, in the order of the files. */
    List<CheckPlace> checks() {
        return checks;
    }

    /** The odds before anything is seen; the same object for the same weights and age while there is room. */
    Priors priors(CauseWeights weights, Priors.Age age) {
        if (weights.areOfTheBook()) {
            return Objects.requireNonNull(priorsOfBook.get(age));
        }
        Learned key = new Learned(weights, age);
        Priors known = priorsOfLearned.find(key);
        return known == null ? priorsOfLearned.keep(key, priorsMade(weights, age)) : known;
    }

    private Priors priorsMade(CauseWeights weights, Priors.Age age) {
        return new Priors(model, layout, weights, age, candidates);
    }

    /** Which causes exclude each other or come in pairs. */
    Ties ties() {
        return ties;
    }

    /** How one thing leads to another. */
    Steps steps() {
        return steps;
    }

    private record Learned(CauseWeights weights, Priors.Age age) {}

    private record Shown(double strength, List<Sign> signs, boolean firstRunOnly) {}

    /**
     * One link of a cause at a place. A cause of a circuit or of the vehicle shows as a whole or not at all, and then at
     * each place with a chance of its own: four dragging wheels are one piece of evidence for what holds them all. A
     * cause of an axle often shows at one of its wheels only, unless it works on both alike.
     */
    static final class Effect {

        final double strength;
        final boolean asOne;
        final boolean firstRunOnly;
        final int[] signs;

        Effect(double strength, boolean asOne, boolean firstRunOnly, int[] signs) {
            this.strength = strength;
            this.asOne = asOne;
            this.firstRunOnly = firstRunOnly;
            this.signs = signs;
        }
    }

    /**
     * A candidate that would show a sign.
     *
     * @param candidate its number
     * @param effect the link by which it would
     */
    record Showing(int candidate, Effect effect) {}

    /**
     * The layout of a vehicle: all that causes can depend on, and nothing that tells two such vehicles apart.
     *
     * @param category category of the vehicle
     * @param axles axles from the front, without what they carry
     * @param split division of the hydraulic circuits
     * @param drive driven axles
     * @param regenerative whether the drive brakes regeneratively
     * @param antilock whether an anti-lock system is fitted
     */
    record Kind(
            String category,
            List<Axle> axles,
            @Nullable CircuitSplit split,
            @Nullable Drive drive,
            @Nullable Boolean regenerative,
            @Nullable Boolean antilock) {

        static Kind of(Vehicle vehicle) {
            return new Kind(
                    vehicle.category(),
                    vehicle.axles().stream().map(Kind::unladen).toList(),
                    vehicle.circuitSplit(),
                    vehicle.drive(),
                    vehicle.regenerative(),
                    vehicle.antilock());
        }

        private static Axle unladen(Axle axle) {
            return axle.unladenLoad() == null
                    ? axle
                    : new Axle(axle.number(), axle.steered(), axle.brake(), axle.parkingBrake());
        }

        private Vehicle vehicle() {
            return new Vehicle(
                    category,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    drive,
                    null,
                    regenerative,
                    null,
                    split,
                    antilock,
                    null,
                    axles,
                    null);
        }
    }
}

package org.axlecause.judgement;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Stream;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.Deficiency;
import org.axlecause.facts.EarlierFigure;
import org.axlecause.facts.EarlierShape;
import org.axlecause.facts.Exemption;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Limit;
import org.axlecause.facts.LimitRisk;
import org.axlecause.facts.Place;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RegimeSheet;
import org.axlecause.facts.RoadDeviation;
import org.axlecause.facts.RoadTestRecorded;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.ShapeOfLoss;
import org.axlecause.facts.Stage;
import org.axlecause.facts.TestDoubt;
import org.axlecause.measurement.Conformity;
import org.jspecify.annotations.Nullable;

/** The tests of a case, with the ones that count: for each brake and axle the latest before the work and the latest after it. */
final class Tests {

    /** Stages that speak about causes. */
    static final Set<Stage> BEFORE = EnumSet.of(Stage.ARRIVAL, Stage.DIAGNOSTIC);
    /** The stage that proves the repair. */
    static final Set<Stage> AFTER = EnumSet.of(Stage.FINAL);

    private final List<TestRun> runs;
    private final Map<Asked, Map<Place, TestRun>> latest = new HashMap<>();

    private Tests(List<TestRun> runs) {
        this.runs = List.copyOf(runs);
    }

    /** The standing tests with the figures kept of them and those that a regime makes of them. */
    static Tests of(StandingHistory history, @Nullable RegimeSheet sheet) {
        List<TestRun> runs = new ArrayList<>();
        for (Recorded recorded : history.entries()) {
            if (recorded.entry() instanceof RollerTestRecorded test) {
                runs.add(TestRun.of(recorded, test.stage(), test.brake(), sheet));
            } else if (recorded.entry() instanceof RoadTestRecorded test) {
                runs.add(TestRun.of(recorded, test.stage(), test.brake(), sheet));
            }
        }
        return new Tests(runs);
    }

    List<TestRun> runs() {
        return runs;
    }

    boolean has(Set<Stage> stages) {
        return runs.stream().anyMatch(run -> stages.contains(run.stage()));
    }

    /**
     * Figures of the latest tests of these stages. Before the work, what a run cannot show stands as the run before
     * showed it.
     */
    List<Figure> figures(Set<Stage> stages) {
        List<Figure> latest = latest(stages, TestRun::figures, Figure::place);
        Map<Shows, Figure> standing = standing(stages, latest);
        if (standing.isEmpty()) {
            return latest;
        }
        List<Figure> figures = new ArrayList<>();
        latest.stream()
                .filter(figure -> !standing.containsKey(Shows.of(figure)))
                .forEach(figures::add);
        figures.addAll(standing.values());
        return figures;
    }

    /** Figures of those tests of these stages that a later one of the same axle and brake has taken the place of. */
    List<EarlierFigure> earlierFigures(Set<Stage> stages) {
        Set<Figure> standing = new HashSet<>(standing(stages, latest(stages, TestRun::figures, Figure::place))
                .values());
        return earlier(stages, TestRun::figures, Figure::place).stream()
                .filter(figure -> !standing.contains(figure))
                .map(EarlierFigure::new)
                .toList();
    }

    /** Figures of earlier runs that the latest could not show, each as it was shown last; slip is seen or it was not. */
    private Map<Shows, Figure> standing(Set<Stage> stages, List<Figure> latest) {
        Map<Shows, Figure> standing = new LinkedHashMap<>();
        if (stages.equals(AFTER)) {
            return standing;
        }
        List<Figure> earlier = earlier(stages, TestRun::figures, Figure::place);
        if (earlier.isEmpty()) {
            return standing;
        }
        Set<Shows> shown = new HashSet<>();
        Set<Shows> lacking = new HashSet<>();
        for (Figure figure : latest) {
            (figure.observable() ? shown : lacking).add(Shows.of(figure));
        }
        lacking.removeAll(shown);
        for (Figure figure : earlier) {
            boolean stands = figure.observable() && figure.kind() != FigureKind.SLIP_FORCE;
            if (stands && lacking.contains(Shows.of(figure))) {
                standing.put(Shows.of(figure), figure);
            }
        }
        return standing;
    }

    /** What a figure is a figure of. */
    private record Shows(FigureKind kind, BrakeSystem brake, Place place) {

        static Shows of(Figure figure) {
            return new Shows(figure.kind(), figure.brake(), figure.place());
        }
    }

    /** Shapes of the loss in service brake tests of these stages that a later one has taken the place of. */
    List<EarlierShape> earlierShapes(Set<Stage> stages) {
        return earlier(stages, Tests::serviceShapes, ShapeOfLoss::place).stream()
                .map(EarlierShape::new)
                .toList();
    }

    /** Shapes of the loss in the latest service brake tests of these stages; the parking brake has causes of its own. */
    List<ShapeOfLoss> shapes(Set<Stage> stages) {
        return latest(stages, Tests::serviceShapes, ShapeOfLoss::place);
    }

    private static List<ShapeOfLoss> serviceShapes(TestRun run) {
        return run.brake() == BrakeSystem.PARKING ? List.of() : run.shapes();
    }

    /** What a regime does not hold against the vehicle in the latest tests of these stages. */
    List<Exemption> exemptions(Set<Stage> stages) {
        return latest(stages, TestRun::exemptions, Exemption::place);
    }

    /** How sure the verdicts on the figures of the latest tests of these stages are. */
    List<LimitRisk> risks(Set<Stage> stages) {
        return latest(stages, TestRun::risks, risk -> risk.figure().place());
    }

    /** How likely the figure of a deficiency lies beyond its limit in truth; null where that can't be said. */
    @Nullable
    BigDecimal probabilityNonConforming(Deficiency deficiency) {
        Limit limit = deficiency.limit();
        if (limit == null) {
            return null;
        }
        for (TestRun run : runs) {
            if (run.test().equals(deficiency.test())) {
                return Stream.concat(
                                run.risks().stream().filter(risk -> risk.limit().equals(limit)),
                                run.figures().stream()
                                        .filter(limit::isAbout)
                                        .map(figure -> Conformity.risk(figure, limit)))
                        .filter(Objects::nonNull)
                        .findFirst()
                        .map(LimitRisk::nonConforming)
                        .orElse(null);
            }
        }
        return null;
    }

    /** How far the vehicle left the straight line on the latest road tests of these stages. */
    List<RoadDeviation> deviations(Set<Stage> stages) {
        return latest(stages, TestRun::deviations, deviation -> Place.VEHICLE);
    }

    /** Doubts about the latest tests of these stages. */
    List<TestDoubt> doubts(Set<Stage> stages) {
        return latest(stages, TestRun::doubts, TestDoubt::place);
    }

    /** How many tests of this brake after the work show the axle. */
    int rounds(Place axle, BrakeSystem brake) {
        return (int) runs.stream()
                .filter(run -> AFTER.contains(run.stage()) && run.brake() == brake && run.shows(axle))
                .count();
    }

    /** For each axle the latest test of this brake that shows it, whatever its stage; by axle. */
    Map<Place, TestRun> latestByAxle(BrakeSystem brake, Set<Stage> stages) {
        return latest.computeIfAbsent(new Asked(brake, stages), this::latestByAxle);
    }

    private Map<Place, TestRun> latestByAxle(Asked asked) {
        Map<Place, TestRun> found = new TreeMap<>();
        for (TestRun run : runs) {
            if (run.brake() == asked.brake && asked.stages.contains(run.stage())) {
                Place last = null;
                for (Figure figure : run.figures()) {
                    if (last == null || !last.sameAxle(figure.place())) {
                        last = figure.place().axlePlace();
                        found.put(last, run);
                    }
                }
            }
        }
        return Collections.unmodifiableMap(found);
    }

    /** The tests that are asked for. */
    private record Asked(BrakeSystem brake, Set<Stage> stages) {}

    private <T> List<T> earlier(Set<Stage> stages, Function<TestRun, List<T>> parts, Function<T, Place> placeOf) {
        List<T> earlier = new ArrayList<>();
        for (BrakeSystem brake : BrakeSystem.values()) {
            Map<Place, TestRun> latest = latestByAxle(brake, stages);
            for (TestRun run : runs) {
                if (run.brake() == brake && stages.contains(run.stage())) {
                    Place axle = null;
                    boolean counts = false;
                    for (T part : parts.apply(run)) {
                        Place place = placeOf.apply(part);
                        if (axle == null || !axle.sameAxle(place)) {
                            axle = place.axlePlace();
                            counts = run.equals(latest.get(axle));
                        }
                        if (!counts) {
                            earlier.add(part);
                        }
                    }
                }
            }
        }
        return earlier;
    }

    private <T> List<T> latest(Set<Stage> stages, Function<TestRun, List<T>> parts, Function<T, Place> placeOf) {
        List<T> chosen = new ArrayList<>();
        for (BrakeSystem brake : BrakeSystem.values()) {
            Map<Place, TestRun> latest = latestByAxle(brake, stages);
            for (TestRun run : runs) {
                if (run.brake() == brake && stages.contains(run.stage())) {
                    Place axle = null;
                    boolean counts = false;
                    for (T part : parts.apply(run)) {
                        Place place = placeOf.apply(part);
                        if (axle == null || !axle.sameAxle(place)) {
                            axle = place.axlePlace();
                            TestRun last = latest.get(axle);
                            counts = last == null ? latest.containsValue(run) : last.equals(run);
                        }
                        if (counts) {
                            chosen.add(part);
                        }
                    }
                }
            }
        }
        return chosen;
    }
}

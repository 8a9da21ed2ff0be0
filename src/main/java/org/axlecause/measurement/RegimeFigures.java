package org.axlecause.measurement;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.Figure;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RegimeSheet;
import org.axlecause.facts.RegimeTerms;
import org.axlecause.facts.RoadTestRecorded;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.Stage;
import org.axlecause.facts.Vehicle;

/** Makes the figures that a regime holds against its limits, from the tests of a case, exactly and in decimals. */
public final class RegimeFigures {

    private RegimeFigures() {}

    /**
     * The figures of all tests by the formulas of a regime. Axle figures belong to one test each; a figure of the whole
     * vehicle is made of the latest test of each axle in a stage and bears the identity of the last of them.
     *
     * @param entries entries of the case that stand; others than tests are passed over
     * @param vehicle the vehicle
     * @param terms what the regime asks of it
     */
    public static RegimeSheet of(List<Recorded> entries, Vehicle vehicle, RegimeTerms terms) {
        RegimeFigureSheet sheet = new RegimeFigureSheet(terms);
        Map<StageAndBrake, List<TestedAxle>> byStage = new TreeMap<>();
        for (Recorded recorded : entries.stream().sorted().toList()) {
            if (recorded.entry() instanceof RollerTestRecorded test && recorded.figures() != null) {
                recorded.figures().figures().forEach(figure -> sheet.weigh(figure, null));
                StageAndBrake key = new StageAndBrake(test.stage(), test.brake());
                for (TestedAxle axle : TestedAxle.of(recorded, test, vehicle, terms)) {
                    AxleFigures.of(axle, terms, sheet);
                    byStage.computeIfAbsent(key, stage -> new ArrayList<>()).add(axle);
                }
            } else if (recorded.entry() instanceof RoadTestRecorded test) {
                RoadFigures.of(recorded.id(), test, terms, sheet);
            }
        }
        byStage.forEach((key, axles) -> VehicleFigures.of(latestOfEach(axles), vehicle, terms, sheet));
        return sheet.sorted();
    }

    private static List<TestedAxle> latestOfEach(List<TestedAxle> axles) {
        Map<Integer, TestedAxle> latest = new TreeMap<>();
        axles.forEach(axle -> latest.put(axle.number(), axle));
        return List.copyOf(latest.values());
    }

    /** A regime figure's value by the regime's rounding. */
    static BigDecimal rounded(BigDecimal value, RegimeTerms terms) {
        return terms.rounding() == null ? value : terms.rounding().of(value);
    }

    /** Order of figures wherever they are listed. */
    static final Comparator<Figure> ORDER = Comparator.comparing(Figure::test)
            .thenComparing(Figure::brake)
            .thenComparing(Figure::place)
            .thenComparing(Figure::kind);

    private record StageAndBrake(Stage stage, BrakeSystem brake) implements Comparable<StageAndBrake> {

        @Override
        public int compareTo(StageAndBrake other) {
            int byStage = stage.compareTo(other.stage);
            return byStage != 0 ? byStage : brake.compareTo(other.brake);
        }
    }
}

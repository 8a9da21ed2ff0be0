package org.axlecause.measurement;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.DoubtCode;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Place;
import org.axlecause.facts.Stage;
import org.axlecause.facts.TestDoubt;
import org.axlecause.facts.TestFigures;
import org.jspecify.annotations.Nullable;

/** Whether several runs of one stage with one brake agree, and what they say together. */
public final class Repeatability {

    private Repeatability() {}

    /**
     * Doubts about runs, with nothing done to the brakes between them, whose forces at a wheel differ by more than
     * noise. Where two runs or more agree, only those that
     * stand apart from them are doubted; else all of them are.
     */
    public static List<TestDoubt> doubts(List<TestFigures> tests) {
        return doubts(tests, TradeValues.released());
    }

    static List<TestDoubt> doubts(List<TestFigures> tests, TradeValues trade) {
        List<TestDoubt> doubts = new ArrayList<>();
        for (List<Figure> runs : runsOf(tests, FigureKind.PEAK).values()) {
            for (Figure run : runs) {
                long agreeing = runs.stream()
                        .filter(other -> !other.test().equals(run.test()) && agree(run, other, trade))
                        .count();
                int largest = runs.stream()
                        .mapToInt(one -> (int) runs.stream()
                                .filter(other -> agree(one, other, trade))
                                .count())
                        .max()
                        .orElse(0);
                boolean apart = runs.stream().anyMatch(other -> !agree(run, other, trade));
                if (apart && (agreeing == 0 || agreeing + 1 < largest)) {
                    doubts.add(new TestDoubt(DoubtCode.NOT_REPEATABLE, run.place(), run.test(), words(run, runs)));
                }
            }
        }
        doubts.sort(Comparator.comparing(TestDoubt::place).thenComparing(TestDoubt::test));
        return List.copyOf(doubts);
    }

    private static String words(Figure run, List<Figure> runs) {
        return String.format(
                Locale.ROOT,
                "%s runs of the %s brake read %s N: repeat until two runs agree",
                run.stage(),
                run.brake(),
                String.join(
                        ", ",
                        runs.stream()
                                .map(figure -> String.format(Locale.ROOT, "%.0f", valueOf(figure)))
                                .toList()));
    }

    static boolean agree(Figure one, Figure other, TradeValues trade) {
        double distance = Math.abs(valueOf(one) - valueOf(other));
        double higher = Math.max(valueOf(one), valueOf(other));
        return distance <= trade.of(TradeValueCode.REPEAT_FORCE)
                || distance <= trade.of(TradeValueCode.REPEAT_SHARE) * higher;
    }

    /**
     * What runs say together.
     *
     * @param kind the figure
     * @param place where
     * @param mean mean of the runs
     * @param spread standard deviation between the runs; 0 for a single one
     * @param uncertainty standard uncertainty of the mean, the tester's share not lessened by repeating; null where that
     *     is not known
     * @param runs how many runs
     */
    public record Together(
            FigureKind kind,
            Place place,
            double mean,
            double spread,
            @Nullable Double uncertainty,
            int runs) {}

    /** The mean of a figure over the runs of one stage with one brake; null where no run shows it. */
    public static @Nullable Together together(
            List<TestFigures> tests, Stage stage, BrakeSystem brake, FigureKind kind, Place place) {
        List<Figure> runs = runsOf(tests, kind).getOrDefault(new Key(stage, brake, place), List.of());
        if (runs.isEmpty()) {
            return null;
        }
        double mean =
                runs.stream().mapToDouble(Repeatability::valueOf).average().orElse(0);
        double squares = runs.stream()
                .mapToDouble(run -> Math.pow(valueOf(run) - mean, 2))
                .sum();
        int count = runs.size();
        double spread = count < 2 ? 0 : Math.sqrt(squares / (count - 1));
        double largest = 0;
        boolean known = true;
        for (Figure run : runs) {
            BigDecimal own = run.uncertainty();
            known &= own != null;
            largest = Math.max(largest, own == null ? 0 : own.doubleValue());
        }
        return new Together(
                kind, place, mean, spread, known ? Math.hypot(largest, spread / Math.sqrt(count)) : null, count);
    }

    private static double valueOf(Figure figure) {
        BigDecimal value = figure.value();
        return value == null ? Double.NaN : value.doubleValue();
    }

    private record Key(Stage stage, BrakeSystem brake, Place place) implements Comparable<Key> {

        private static final Comparator<Key> ORDER =
                Comparator.comparing(Key::stage).thenComparing(Key::brake).thenComparing(Key::place);

        @Override
        public int compareTo(Key other) {
            return ORDER.compare(this, other);
        }
    }

    private static Map<Key, List<Figure>> runsOf(List<TestFigures> tests, FigureKind kind) {
        Map<Key, List<Figure>> runs = new TreeMap<>();
        tests.stream()
                .sorted(Comparator.comparing(TestFigures::test))
                .flatMap(test -> test.figures().stream())
                .filter(figure -> figure.kind() == kind && figure.value() != null)
                .forEach(figure -> runs.computeIfAbsent(
                                new Key(figure.stage(), figure.brake(), figure.place()), key -> new ArrayList<>())
                        .add(figure));
        return runs;
    }
}

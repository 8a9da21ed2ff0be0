package org.axlecause.statistics;

import java.time.YearMonth;
import java.util.List;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/** What an answer is drawn as; names in it are codes, which get their words where it is drawn. */
public sealed interface Chart {

    /** What the chart is told apart by from the others of its answer: a cause, a moment; empty where it is the only one. */
    String of();

    /** Whether there is nothing to draw. */
    boolean isEmpty();

    /**
     * Causes from the most frequent one to the least.
     *
     * @param causes confirmed causes
     */
    record Most(Pareto causes) implements Chart {

        @Override
        public String of() {
            return "";
        }

        @Override
        public boolean isEmpty() {
            return causes.lines().isEmpty();
        }
    }

    /**
     * A cause by month.
     *
     * @param of code of the cause
     * @param months months that are told, in their order
     */
    record Months(String of, List<Month> months) implements Chart {

        public Months {
            months = List.copyOf(months);
        }

        @Override
        public boolean isEmpty() {
            return months.isEmpty();
        }
    }

    /**
     * A month of a cause.
     *
     * @param month of the presentation
     * @param cases those with the cause among all of the month
     */
    record Month(YearMonth month, Proportion cases) {}

    /**
     * Repairs without a return over the days after their proof.
     *
     * @param groups groups that are told
     * @param days how long repairs are followed
     */
    record Returns(List<Group> groups, long days) implements Chart {

        public Returns {
            groups = List.copyOf(groups);
        }

        /** The same with other words for its groups. */
        public Returns named(UnaryOperator<String> words) {
            return new Returns(
                    groups.stream()
                            .map(group -> new Group(words.apply(group.name()), group.curve()))
                            .toList(),
                    days);
        }

        @Override
        public String of() {
            return "";
        }

        @Override
        public boolean isEmpty() {
            return groups.isEmpty();
        }
    }

    /**
     * A group of repairs.
     *
     * @param name its word; empty where all repairs are one group
     * @param curve the repairs that were followed
     */
    record Group(String name, KaplanMeier curve) {}

    /**
     * Sites against what is expected of their vehicles.
     *
     * @param measure what they are compared by: the code of a cause or of another measure
     * @param funnel sites that are told
     */
    record Sites(String measure, Funnel funnel) implements Chart {

        /** The same with other words for its sites. */
        public Sites named(UnaryOperator<String> words) {
            return new Sites(measure, funnel.named(words));
        }

        @Override
        public String of() {
            return "";
        }

        @Override
        public boolean isEmpty() {
            return funnel.points().isEmpty();
        }
    }

    /**
     * Probabilities of causes against what came true.
     *
     * @param of the moment at which they were told
     * @param forecasts the probabilities; null where too few cases stand behind them
     */
    record Probabilities(String of, @Nullable Calibration forecasts) implements Chart {

        @Override
        public boolean isEmpty() {
            return forecasts == null;
        }
    }
}

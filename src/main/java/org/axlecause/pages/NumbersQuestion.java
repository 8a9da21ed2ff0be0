package org.axlecause.pages;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.axlecause.statistics.Subject;
import org.jspecify.annotations.Nullable;

/** What can be asked on the pages of numbers, with its words. */
public enum NumbersQuestion {
    CAUSES(
            Subject.CAUSES,
            "shares",
            "Which causes are confirmed, and how often?",
            "Shares of the cases with their intervals, all together or split by make, age, site and more.",
            List.of("cause", "axle", "side", "role", "by")),
    MOST(
            Subject.CAUSES,
            "pareto",
            "Which causes are most common?",
            "From the most frequent cause to the least, and what they make up together.",
            List.of("cause", "axle", "side", "role")),
    MONTHS(
            Subject.CAUSES,
            "trend",
            "How do causes change from month to month?",
            "Shares by month of presentation with the limits of chance, and the month in which a share changed.",
            List.of("cause", "axle", "side", "role")),
    TOGETHER(
            Subject.CAUSES,
            "co-occurrence",
            "Which causes come together?",
            "Pairs of causes in the same case, against what chance would bring together.",
            List.of("cause")),
    GROUPS(
            Subject.CAUSES,
            "comparison",
            "Do two groups of cases differ?",
            "Shares of causes in two groups, their difference with its interval, and whether chance explains it.",
            List.of("compare", "cause", "axle", "side", "role")),
    REPAIRS(
            Subject.REPAIRS,
            null,
            "What is repaired, agreed and cured?",
            "Work lines with decisions and prices, and what the tests after the work showed.",
            List.of("item", "by")),
    RETURNS(
            Subject.RETURNS,
            null,
            "Which repairs come back?",
            "Shares of repairs without a return over the days after their proof.",
            List.of("item", "by")),
    SITES(
            Subject.SITES,
            null,
            "Does a site stand out?",
            "Each site against what age, distance and layout of its vehicles lead one to expect.",
            List.of("measure", "cause")),
    CHECKS(
            Subject.CHECKS,
            null,
            "What do checks tell us, and are the probabilities right?",
            "How often checks are made, how much they tell per minute, and how far the probabilities of causes hold.",
            List.of("check", "cause", "moment", "by"));

    private final Subject subject;
    private final @Nullable String part;
    private final String words;
    private final String about;
    private final List<String> asks;

    NumbersQuestion(Subject subject, @Nullable String part, String words, String about, List<String> asks) {
        this.subject = subject;
        this.part = part;
        this.words = words;
        this.about = about;
        this.asks = asks;
    }

    /** The question with this code; empty where there is none. */
    static Optional<NumbersQuestion> of(String code) {
        return Stream.of(values())
                .filter(question -> question.toString().equals(code))
                .findFirst();
    }

    Subject subject() {
        return subject;
    }

    /** The part of the subject; null where it has none. */
    @Nullable
    String part() {
        return part;
    }

    /** Parameters that say what is asked, beside those that choose the cases. */
    List<String> asks() {
        return asks;
    }

    /** The question in words. */
    public String words() {
        return words;
    }

    /** What its answer holds. */
    public String about() {
        return about;
    }

    /** Its word in addresses. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}

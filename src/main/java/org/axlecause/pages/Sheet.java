package org.axlecause.pages;

import io.quarkus.qute.RawString;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What stands on a sheet, in words; the templates only place it.
 *
 * @param head what case it is
 * @param fitness what it means for the use of the vehicle
 * @param worked whether work was done, so that what was found before it may no longer be so
 * @param outOfRange why neither causes nor work are worked out for this vehicle; null where they are
 * @param provisional whether what must be done may still change
 * @param faults what was found against the limits
 * @param causes what brought it about, the most upstream ones
 * @param pictures forces of the two wheels, axle by axle
 * @param traces forces over time
 * @param declined required lines that were refused
 * @param groups lines by how much they are needed
 * @param undecided whether a line waits for the customer
 * @param price what they cost; null where the site has no price list
 * @param proof what the last test showed; null before it
 * @param figures figures of the tests
 * @param checks what to look at next
 * @param beforeChecks cautions that these looks call for
 * @param steps work in a valid order
 * @param cautions cautions, numbered as the steps name them
 * @param questions what is open
 * @param words words that the sheet explains
 */
public record Sheet(
        Head head,
        Fitness fitness,
        boolean worked,
        @Nullable String outOfRange,
        boolean provisional,
        List<Fault> faults,
        List<Reason> causes,
        List<Picture> pictures,
        List<Picture> traces,
        List<Line> declined,
        List<Group> groups,
        boolean undecided,
        @Nullable Price price,
        @Nullable Proof proof,
        List<FigureRow> figures,
        List<Check> checks,
        List<String> beforeChecks,
        List<Step> steps,
        List<Caution> cautions,
        List<String> questions,
        List<Word> words) {

    /** Whether a cause was found, not only suspected. */
    public boolean causeFound() {
        return causes.stream().anyMatch(Reason::found);
    }

    /** Whether required work waits for a decision. */
    public boolean requiredUndecided() {
        return groups.stream()
                .filter(Group::required)
                .flatMap(group -> group.lines().stream())
                .anyMatch(Line::undecided);
    }

    /** Whether any figure was measured after the work. */
    public boolean measuredAgain() {
        return figures.stream().anyMatch(row -> !row.after().equals(PlainWords.NOT_MEASURED));
    }

    /** The cautions of a step. */
    public List<Caution> cautionsOf(Step step) {
        return cautions.stream()
                .filter(caution -> step.cautions().contains(caution.number()))
                .toList();
    }

    /**
     * What case it is.
     *
     * @param reference reference of the case
     * @param site name of the site
     * @param vehicle make, model and what else tells it
     * @param state version and time of what the sheet shows
     * @param regime inspection that its limits are of
     */
    public record Head(
            String reference,
            String site,
            String vehicle,
            String state,
            @Nullable String regime) {

        static final String NOT_KNOWN = "not known yet";

        /** The vehicle as a heading. */
        public String title() {
            return vehicle.equals(NOT_KNOWN) ? "Vehicle " + NOT_KNOWN : vehicle;
        }

        /** The site in a sentence. */
        public String workshop() {
            return site.equals(NOT_KNOWN) ? "workshop " + NOT_KNOWN : site;
        }
    }

    /**
     * What it means for the use of the vehicle.
     *
     * @param name the level in a word or two
     * @param advice what to do
     * @param refused what it means to decline required work
     * @param because why
     */
    public record Fitness(String name, String advice, String refused, List<String> because) {}

    /**
     * Something beyond a limit.
     *
     * @param place where
     * @param text what is wrong
     * @param figure number beside its limit; null where the inspector judges by eye
     * @param kind class of the inspection; null where it has none
     */
    public record Fault(
            String place,
            String text,
            @Nullable String figure,
            @Nullable String kind) {

        /** The number beside its limit, as a sentence; null where the inspector judges by eye. */
        public @Nullable String figureAsSentence() {
            return figure == null ? null : PlainWords.stopped(PlainWords.sentence(figure));
        }
    }

    /**
     * A cause.
     *
     * @param place where
     * @param text what it is
     * @param found whether it was found, not only suspected
     * @param standing how sure it is
     * @param chain how it leads to the fault, step by step
     */
    public record Reason(String place, String text, boolean found, String standing, List<String> chain) {

        private static final String LEFT = "left wheel";
        private static final String RIGHT = "right wheel";

        /** Whether the other says the same of the other wheel of the axle. */
        boolean isOfTheOtherWheel(Reason other) {
            return !place.equals(other.place)
                    && place.replace(LEFT, RIGHT).equals(other.place.replace(LEFT, RIGHT))
                    && text.equals(other.text)
                    && standing.equals(other.standing)
                    && chain.equals(other.chain);
        }

        /** The same of either wheel of the axle. */
        Reason ofEitherWheel() {
            String either = found ? "both wheels" : "left or right wheel";
            return new Reason(
                    place.replace(place.contains(LEFT) ? LEFT : RIGHT, either),
                    text,
                    found,
                    found ? standing : standing.replace(" in 100,", " in 100 each,"),
                    chain);
        }
    }

    /**
     * A chart.
     *
     * @param caption what it shows
     * @param svg the drawing
     */
    public record Picture(String caption, RawString svg) {}

    /**
     * Lines of one necessity.
     *
     * @param title what they are
     * @param text what that means
     * @param required whether the fault is not cured without them
     * @param lines the lines
     */
    public record Group(String title, String text, boolean required, List<Line> lines) {}

    /**
     * A line of the work.
     *
     * @param id the line of the case document that it is
     * @param title what is done where
     * @param quantity how much of what; null where nothing is taken
     * @param reasons why
     * @param standing where it stands
     * @param undecided whether the customer still decides
     * @param change what is new since the last decision; null where nothing is
     * @param price what it costs; null where there is no price list
     * @param others what it costs with other parts
     */
    public record Line(
            String id,
            String title,
            @Nullable String quantity,
            List<String> reasons,
            String standing,
            boolean undecided,
            @Nullable String change,
            @Nullable String price,
            List<String> others) {

        /** What it costs, in a sentence; null where there is no price list. */
        public @Nullable String priceInWords() {
            return price == null || price.chars().noneMatch(Character::isDigit) ? price : price + " with tax";
        }
    }

    /**
     * What the lines cost.
     *
     * @param totals sums
     * @param labour work whose price is not known and in no sum
     * @param parts parts whose price is not known and in no sum
     * @param missingToDecide whether a price is missing of work that waits for a decision
     * @param missingDecided whether a price is missing of work that is agreed or done
     * @param fixed whether the price list is fixed by a decision
     */
    public record Price(
            List<Total> totals,
            List<String> labour,
            List<String> parts,
            boolean missingToDecide,
            boolean missingDecided,
            boolean fixed) {}

    /**
     * A sum.
     *
     * @param of what it sums
     * @param net without tax
     * @param tax tax
     * @param gross with tax
     */
    public record Total(String of, String net, String tax, String gross) {}

    /**
     * What the last test showed.
     *
     * @param verdict in words
     * @param because why
     * @param rows figures before and after
     */
    public record Proof(String verdict, List<String> because, List<FigureRow> rows) {

        /** The figures that speak of the cure. */
        public List<FigureRow> telling() {
            return rows.stream().filter(FigureRow::telling).toList();
        }

        /** The other figures. */
        public List<FigureRow> others() {
            return rows.stream().filter(row -> !row.telling()).toList();
        }
    }

    /**
     * A figure before and after the work.
     *
     * @param what which figure, where
     * @param before at arrival
     * @param after after the work
     * @param limit what the inspection asks and the workshop aims at; empty where there is neither
     * @param verdict whether the figure after the work keeps to both; empty where there is neither
     * @param telling whether it speaks of the cure: one of a whole axle or vehicle, or one that was or is short
     */
    public record FigureRow(String what, String before, String after, String limit, String verdict, boolean telling) {}

    /**
     * What to look at next.
     *
     * @param text what is done
     * @param place where
     * @param effort minutes and access
     */
    public record Check(String text, String place, String effort) {}

    /**
     * A step of work.
     *
     * @param id the step of the case document that it is
     * @param number its number
     * @param text what is done
     * @param place where
     * @param verify what must hold before the next
     * @param stop when to stop; null where nothing special holds
     * @param tools tools
     * @param cautions numbers of the cautions to read first
     * @param after numbers of the steps that come first
     * @param outcome how it was reported; null while it is open
     */
    public record Step(
            String id,
            int number,
            String text,
            String place,
            String verify,
            @Nullable String stop,
            List<String> tools,
            List<Integer> cautions,
            List<Integer> after,
            @Nullable String outcome) {

        /** The cautions to read first, by their numbers. */
        public String cautionNumbers() {
            return (cautions.size() == 1 ? "Caution\u00a0" : "Cautions\u00a0") + PlainWords.numbers(cautions);
        }

        /** The steps that come first, by their numbers. */
        public String afterNumbers() {
            return (after.size() == 1 ? "After step\u00a0" : "After steps\u00a0") + PlainWords.numbers(after);
        }
    }

    /**
     * A caution.
     *
     * @param number its number
     * @param text its words
     * @param source the document that it is from; null where it is from none
     */
    public record Caution(int number, String text, @Nullable String source) {}

    /**
     * A word that is explained.
     *
     * @param name the word
     * @param text what it means
     */
    public record Word(String name, String text) {}
}

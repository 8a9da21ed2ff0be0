package org.axlecause.statistics;

import java.util.List;
import org.axlecause.casefile.StatisticsTerms;

/** What the words of the answers mean; served with every answer. */
final class Definitions {

    private Definitions() {}

    /** A word with its meaning. */
    record Definition(String word, String means) {}

    static List<Definition> common(StatisticsTerms terms, int leastCell) {
        return common(terms, leastCell, "Wilson's score interval of the share, 95 %.");
    }

    /** With what the intervals of the answer are. */
    static List<Definition> common(StatisticsTerms terms, int leastCell, String interval) {
        return List.of(
                new Definition(
                        "case",
                        "A case that has ended: its repair is proved, or it is closed. Open cases and entries that were"
                                + " taken back are not counted."),
                new Definition(
                        "open",
                        "Cases that have not ended. They are chosen by site, day, make and model alone: the rest is known"
                                + " only when a case ends."),
                new Definition("day", "The day of the presentation in the time zone of the site; months likewise."),
                new Definition(
                        "ageBand, odometerBand",
                        "Years since the first use, or the first registration where no first use is known, and kilometres,"
                                + " at the presentation. Where none is known, the vehicle counts as "
                                + StatisticsTerms.UNKNOWN + "."),
                new Definition(
                        "layout",
                        "The wheel brakes of the axles from the front, joined by +; one brake alone chooses the"
                                + " vehicles that have it on an axle."),
                new Definition("interval", interval),
                new Definition("withheld", "A share of fewer than " + leastCell + " is withheld."));
    }

    static List<Definition> causes() {
        return List.of(
                new Definition(
                        "cause",
                        "Counts when a finding proved it or the technician confirmed it at closing; a case may have"
                                + " several."),
                new Definition("undetermined", "Cases in which no cause was confirmed in either of these ways."),
                new Definition(
                        "role", "A root cause has no confirmed cause upstream of it; the others are contributing."),
                new Definition("axle, side", "Where the cause was."));
    }

    /** What shares of causes are of: all cases; among the most frequent ones all causes. */
    static Definition shares(boolean ofCauses) {
        return new Definition(
                "share",
                ofCauses
                        ? "Of all confirmed causes of the group; they add up to 100 %."
                        : "Of all cases of the group, wherever their causes were; as a case may have several, they may add"
                                + " up to more than 100 %.");
    }

    static List<Definition> learning(int leastCell) {
        return List.of(
                causes().get(0),
                new Definition(
                        "group",
                        "Axles with drum or disc brakes, old or young, as the cause model tells them apart; where no first use"
                                + " is known brakes count as old."),
                new Definition(
                        "learned",
                        "The book's share is held as if it came from so many cases (priorStrength), the confirmed axles are"
                                + " added, and the weight moves as the mean of the beta distribution does. A cause of a"
                                + " circuit or of the vehicle counts on each of its axles."),
                new Definition(
                        "held out",
                        "Vehicles are parted by a keyed digest, so that no vehicle is on both sides. A case that names an earlier"
                                + " one of a vehicle without registration or VIN counts on neither."),
                new Definition(
                        "before, after",
                        "Probabilities after the arrival test in whole percent, by the book and by the learned weights, of each"
                                + " cause that one of them names; what is not named counts as none."),
                new Definition("withheld", "Cells that fewer than " + leastCell + " axles stand behind are withheld."));
    }

    static Definition of(String word, String means) {
        return new Definition(word, means);
    }
}

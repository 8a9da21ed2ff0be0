package org.axlecause.fleet;

import java.time.LocalDate;
import java.util.List;
import org.axlecause.casefile.DrawnCaseStore.Drawn;

/**
 * What copies of a story tell each for itself.
 *
 * @param reference reference of the case
 * @param previousCase the case whose repair it comes back after; empty where there is none
 * @param kilometres distance of the vehicle
 * @param day day of the presentation
 * @param repairDay day of the work and the closing
 */
record StoryWords(
        String reference,
        String previousCase,
        String site,
        String make,
        String model,
        LocalDate firstUsed,
        int kilometres,
        LocalDate day,
        LocalDate repairDay) {

    /** Number of the distance in {@link #all}. */
    static final int KILOMETRES = 6;

    private static final int FEW_KILOMETRES = 48_611;
    private static final int MANY_KILOMETRES = 1_348_613;

    /**
     * Words to tell a story in that stand nowhere else in it; the same vehicle and day in the eyes of the judge.
     *
     * @param number number of the story, so that stories told at a time don't wait for each other's case
     */
    static StoryWords toTell(Drawn drawn, boolean far, int number) {
        return new StoryWords(
                "TOLD-REFERENCE-" + number,
                "TOLD-PREVIOUS-CASE",
                drawn.site(),
                "Told make",
                "Told model",
                Story.firstUsed(drawn),
                far ? MANY_KILOMETRES : FEW_KILOMETRES,
                drawn.day(),
                drawn.day().plusDays(1));
    }

    static StoryWords of(Drawn drawn) {
        String previous = drawn.previousCase();
        return new StoryWords(
                drawn.reference(),
                previous == null ? "" : previous,
                drawn.site(),
                drawn.make(),
                drawn.model(),
                Story.firstUsed(drawn),
                drawn.kilometres(),
                drawn.day(),
                drawn.repairs().isEmpty() ? drawn.day() : drawn.repairs().get(0).verified());
    }

    /** All of them as they are written, in the order of their numbers. */
    List<String> all() {
        return List.of(
                reference,
                previousCase,
                site,
                make,
                model,
                firstUsed.toString(),
                String.valueOf(kilometres),
                day.toString(),
                repairDay.toString());
    }
}

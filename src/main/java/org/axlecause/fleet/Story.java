package org.axlecause.fleet;

import java.time.LocalDate;
import java.util.List;
import org.axlecause.casefile.DrawnCaseStore.Cause;
import org.axlecause.casefile.DrawnCaseStore.Counted;
import org.axlecause.casefile.DrawnCaseStore.Drawn;

/**
 * What drawn cases have in common that are judged alike but for reference, site, names, distance and days.
 *
 * @param regime regime of the site
 * @param category category of the vehicle
 * @param layout wheel brakes from the front, joined by +
 * @param causes confirmed causes; none where it stays undetermined
 * @param outcomes what became of the case, in the words of the statistics
 * @param sides on which side of what tells cases apart it lies
 */
record Story(
        String regime, String category, String layout, List<Cause> causes, List<String> outcomes, List<Integer> sides) {

    Story {
        causes = List.copyOf(causes);
        outcomes = List.copyOf(outcomes);
        sides = List.copyOf(sides);
    }

    static Story of(Drawn drawn, StoryTable table) {
        return new Story(
                drawn.regime(),
                drawn.category(),
                drawn.layout(),
                drawn.causes(),
                drawn.counts().stream()
                        .filter(count -> count.question().equals("outcome"))
                        .map(Counted::code)
                        .sorted()
                        .toList(),
                table.sides(drawn.years(), drawn.kilometres(), firstUsed(drawn), drawn.day()));
    }

    /** Day of first use of a drawn vehicle: as many full years before the presentation as it is old. */
    static LocalDate firstUsed(Drawn drawn) {
        int within = Math.floorMod(drawn.reference().hashCode(), 360);
        return drawn.day().minusYears(drawn.years()).minusDays(within + 1L);
    }

    boolean has(String outcome) {
        return outcomes.contains(outcome);
    }

    /** Whether a repair was tested, proved or not. */
    boolean isWorkedOn() {
        return has("tested");
    }

    /** How the case was closed. */
    String closedAs() {
        return outcomes.stream()
                .filter(outcome -> outcome.startsWith("closed-"))
                .map(outcome -> outcome.substring("closed-".length()))
                .findFirst()
                .orElseThrow();
    }
}

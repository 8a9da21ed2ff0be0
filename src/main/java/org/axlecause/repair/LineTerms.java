package org.axlecause.repair;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.axlecause.facts.AwaitedEvidence;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Departure;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.Party;
import org.jspecify.annotations.Nullable;

/**
 * What the policy says about lines beside their necessity.
 *
 * @param consents whose consent a line needs, by action and item joined by a blank
 * @param hoursAtMost hours that a line may be charged at most, by action and item joined by a blank
 * @param awaited what must be on record before a line counts as scoped
 * @param departures departures that act on this case
 */
public record LineTerms(
        Map<String, Party> consents,
        Map<String, BigDecimal> hoursAtMost,
        List<AwaitedEvidence> awaited,
        List<Departure> departures) {

    /** A policy that says nothing about lines. */
    public static final LineTerms NONE = new LineTerms(Map.of(), Map.of(), List.of(), List.of());

    public LineTerms {
        consents = Map.copyOf(consents);
        hoursAtMost = Map.copyOf(hoursAtMost);
        awaited = List.copyOf(awaited);
        departures = List.copyOf(departures);
    }

    @Nullable
    Party consent(LineKey line) {
        return isDepartedFrom(ClauseCode.CONSENT, line) ? null : consents.get(kind(line));
    }

    @Nullable
    BigDecimal cap(LineKey line) {
        return isDepartedFrom(ClauseCode.LABOUR_CAP, line) ? null : hoursAtMost.get(kind(line));
    }

    /** What the line waits for, in words; null where nothing. */
    @Nullable
    List<String> awaits(LineKey line) {
        List<String> awaits = awaited.stream()
                .filter(evidence -> evidence.line().equals(line))
                .map(AwaitedEvidence::what)
                .distinct()
                .sorted()
                .toList();
        return awaits.isEmpty() ? null : awaits;
    }

    private boolean isDepartedFrom(ClauseCode clause, LineKey line) {
        return departures.stream().anyMatch(departure -> departure.clause() == clause && departure.isOn(line));
    }

    private static String kind(LineKey line) {
        return line.action() + " " + line.item();
    }
}

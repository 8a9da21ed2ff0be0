package org.axlecause.policy;

import java.math.BigDecimal;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.facts.Axle;
import org.axlecause.facts.DepartureRecorded;
import org.axlecause.facts.FindingRecorded;
import org.axlecause.facts.History;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.NeededEvidence;
import org.axlecause.facts.Policy;
import org.axlecause.facts.PolicyClause;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.VehiclePresented;
import org.axlecause.judgement.Judge;
import org.axlecause.judgement.Matter;
import org.axlecause.judgement.PastCases.Past;
import org.jspecify.annotations.Nullable;

/** Judges a past case by the policy that judges it and by a draft, without its departures, and tells the difference. */
final class TryCase {

    private final Judge judge;

    TryCase(Judge judge) {
        this.judge = judge;
    }

    /**
     * What the draft would have done to a case.
     *
     * @param document the document of the case where judging it again would say the same; null where that isn't known
     */
    TrialResult tried(Past past, Policy draft, @Nullable String document) {
        Past open = withoutDepartures(past);
        boolean departed = open.matter().history().entries().size()
                < past.matter().history().entries().size();
        String site = past.matter().site().site();
        try {
            if (document != null && !departed) {
                return result(
                        past,
                        draft,
                        false,
                        Outcome.ofDocument(document),
                        Outcome.of(judge.withoutChecks(past.by(draft))));
            }
            Judge.Compared compared = judge.compare(open.matter(), draft);
            return result(open, draft, departed, Outcome.of(compared.before()), Outcome.of(compared.after()));
        } catch (RuntimeException fault) {
            return TrialResult.of(
                    Outcome.NO_CAUSE,
                    site,
                    new TrialResult.Tally(1, 0, 0, departed ? 1 : 0, 1, 0, 0, 0, Map.of(), Map.of()),
                    null);
        }
    }

    /** The case with its departures left out; the same object where it has none. */
    static Past withoutDepartures(Past past) {
        Matter matter = past.matter();
        List<Recorded> kept = matter.history().entries().stream()
                .filter(recorded -> !(recorded.entry() instanceof DepartureRecorded))
                .toList();
        return kept.size() == matter.history().entries().size()
                ? past
                : new Past(matter.of(new History(matter.history().reference(), kept)), past.region(), null);
    }

    private static TrialResult result(Past past, Policy draft, boolean departed, Outcome before, Outcome after) {
        Map<String, String> old = before.necessities();
        Map<String, String> now = after.necessities();
        List<String> added =
                now.keySet().stream().filter(id -> !old.containsKey(id)).toList();
        List<String> dropped =
                old.keySet().stream().filter(id -> !now.containsKey(id)).toList();
        List<String> otherwise = now.entrySet().stream()
                .flatMap(line -> Stream.ofNullable(old.get(line.getKey()))
                        .filter(was -> !was.equals(line.getValue()))
                        .map(was -> line.getKey() + ": " + was + ", then " + line.getValue()))
                .toList();
        Map<String, BigDecimal> money = difference(before.money(), after.money());
        boolean changed = !before.words().equals(after.words());
        boolean lacking = !changed && lacks(past.matter(), draft);
        String cause = before.cause();
        String site = past.matter().site().site();
        String reference = past.matter().history().reference();
        return TrialResult.of(
                cause,
                site,
                new TrialResult.Tally(
                        1,
                        changed ? 1 : 0,
                        lacking ? 1 : 0,
                        departed ? 1 : 0,
                        0,
                        added.size(),
                        dropped.size(),
                        otherwise.size(),
                        money,
                        difference(before.moneyWithRecommended(), after.moneyWithRecommended())),
                changed
                        ? new TrialResult.Example(reference, site, cause, added, dropped, otherwise, words(money), null)
                        : null);
    }

    /** Whether the draft asks about a quantity otherwise than now, and nobody has measured it on this case. */
    private static boolean lacks(Matter matter, Policy draft) {
        Set<MeasuredQuantity> measured = new HashSet<>();
        Vehicle vehicle = null;
        for (Recorded recorded : matter.history().entries()) {
            if (recorded.entry() instanceof FindingRecorded finding && finding.measurement() != null) {
                measured.add(finding.measurement().quantity());
            } else if (vehicle == null && recorded.entry() instanceof VehiclePresented presented) {
                vehicle = presented.vehicle();
            }
        }
        Vehicle presented = vehicle;
        return presented != null
                && wanted(matter.policy(), draft)
                        .anyMatch(quantity -> !measured.contains(quantity) && has(presented, quantity));
    }

    private static Stream<MeasuredQuantity> wanted(Policy now, Policy draft) {
        Set<String> same = now.clauses().stream().map(TryCase::says).collect(Collectors.toSet());
        return Stream.concat(
                draft.clauses().stream()
                        .filter(clause -> !same.contains(says(clause)))
                        .map(clause -> clause.code().quantity())
                        .filter(Objects::nonNull),
                draft.needed().stream()
                        .filter(needed -> !now.needed().contains(needed))
                        .map(NeededEvidence::quantity)
                        .filter(Objects::nonNull));
    }

    private static boolean has(Vehicle vehicle, MeasuredQuantity quantity) {
        return switch (quantity) {
            case LINING_THICKNESS, DRUM_DIAMETER, DRUM_OVALITY, DRUM_ECCENTRICITY ->
                vehicle.axles().stream().anyMatch(Axle::isDrum);
            case PAD_THICKNESS, DISC_THICKNESS, DISC_THICKNESS_VARIATION, DISC_RUN_OUT ->
                vehicle.axles().stream().anyMatch(Axle::isDisc);
            default -> true;
        };
    }

    private static String says(PolicyClause clause) {
        BigDecimal value = clause.value();
        return clause.code() + " " + (value == null ? null : value.stripTrailingZeros()) + " " + clause.necessity()
                + " " + clause.extent();
    }

    private static Map<String, BigDecimal> difference(Map<String, BigDecimal> before, Map<String, BigDecimal> after) {
        Map<String, BigDecimal> difference = new TreeMap<>(after);
        before.forEach((currency, amount) -> difference.merge(currency, amount.negate(), BigDecimal::add));
        difference.values().removeIf(amount -> amount.signum() == 0);
        return difference;
    }

    private static @Nullable String words(Map<String, BigDecimal> money) {
        return money.isEmpty()
                ? null
                : money.entrySet().stream()
                        .map(entry -> entry.getValue().toPlainString() + " " + entry.getKey())
                        .collect(Collectors.joining(", "));
    }
}

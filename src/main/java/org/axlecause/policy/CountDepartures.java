package org.axlecause.policy;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.axlecause.access.Actor;
import org.axlecause.access.Role;
import org.axlecause.facts.ClauseCode;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.TenantTransaction;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** Counts the departures from clauses of the policy, the most first. */
@ApplicationScoped
public class CountDepartures {

    /** Those who may read the counts. */
    public static final Set<Role> READERS = Set.of(Role.POLICY, Role.ANALYST, Role.DESK);

    private final DepartureStore departures;
    private final TenantTransaction transaction;

    CountDepartures(DepartureStore departures, TenantTransaction transaction) {
        this.departures = departures;
        this.transaction = transaction;
    }

    /** What a clause means; its code where this release has none of that code. */
    public static String meaning(String clause) {
        ClauseWord word = Vocabulary.released().find(clause);
        return word == null ? clause : word.means();
    }

    /** Departures from one clause at one site. */
    @Schema(name = "DepartureCount", description = "Departures from one clause at one site.")
    public record DepartureCountView(
            String clause,
            String site,

            @Schema(description = "Cases with such departures.")
            int cases,

            @Schema(description = "Departures that act.") int acting,

            @Schema(description = "Departures from a clause that is locked, or that decides no line.")
            int withoutEffect) {

        static DepartureCountView of(DepartureStore.Count count) {
            return new DepartureCountView(
                    count.clause(), count.site(), count.cases(), count.acting(), count.withoutEffect());
        }
    }

    /** Departures by clause and site of the cases that were presented from one day to before another; all where null. */
    public List<DepartureCountView> count(
            @Nullable String clause, @Nullable String site, @Nullable String from, @Nullable String to, Actor actor) {
        if (site != null && !actor.maySee(site)) {
            throw RefusedException.notFound("There is no site '" + site + "'.");
        }
        List<Problem.Cause> causes = new ArrayList<>();
        LocalDate first = day("/from", from, causes);
        LocalDate after = day("/to", to, causes);
        if (clause != null
                && Stream.of(ClauseCode.values()).map(ClauseCode::toString).noneMatch(clause::equals)) {
            causes.add(new Problem.Cause("/clause", "'" + clause + "' is no code of a clause."));
        }
        if (!causes.isEmpty()) {
            throw RefusedException.invalidPayload(causes);
        }
        return transaction.call(
                actor.tenant(),
                () -> departures.count(sites(site, actor.sites()), clause, first, after).stream()
                        .map(DepartureCountView::of)
                        .toList());
    }

    private static @Nullable LocalDate day(String pointer, @Nullable String sent, List<Problem.Cause> causes) {
        try {
            return sent == null ? null : LocalDate.parse(sent);
        } catch (DateTimeParseException wrong) {
            causes.add(new Problem.Cause(pointer, "'" + sent + "' is no day; expected is one such as 2026-03-02."));
            return null;
        }
    }

    private static @Nullable List<String> sites(@Nullable String site, @Nullable Set<String> own) {
        return site == null ? (own == null ? null : own.stream().sorted().toList()) : List.of(site);
    }
}

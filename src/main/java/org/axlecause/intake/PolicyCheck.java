package org.axlecause.intake;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.axlecause.access.Actor;
import org.axlecause.access.Role;
import org.axlecause.access.Site;
import org.axlecause.access.SiteStore;
import org.axlecause.casefile.CaseStore;
import org.axlecause.casefile.StoredCase;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.EntryType;
import org.axlecause.facts.Policy;
import org.axlecause.facts.PolicyAdopted;
import org.axlecause.judgement.Departures;
import org.axlecause.judgement.PolicyChoice;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.RefusedException.Reason;
import org.jspecify.annotations.Nullable;

/**
 * Checks that nobody gets round the policy by an event: a locked clause is not departed from, and a case is moved to another
 * version only by those who write policies for all sites.
 */
@ApplicationScoped
class PolicyCheck {

    private static final Set<Role> OF_THE_WORKSHOP = EnumSet.of(Role.SENDER, Role.TECHNICIAN, Role.DESK);

    private final CaseStore cases;
    private final SiteStore sites;
    private final PolicyChoice policies;

    PolicyCheck(CaseStore cases, SiteStore sites, PolicyChoice policies) {
        this.cases = cases;
        this.sites = sites;
        this.policies = policies;
    }

    /**
     * What the policy has against the event; empty where nothing.
     *
     * @param beside events of the same case that are sent with it
     */
    Optional<Problem> whatIsWrong(
            IncomingEvent event, String reference, Collection<IncomingEvent> beside, Actor actor) {
        if (event.type() == EntryType.POLICY_ADOPTED) {
            return mayMove(actor)
                    ? Optional.empty()
                    : Optional.of(RefusedException.notAllowed(
                                    "policy.adopted moves a case to another version of the policy; it is sent with a key of"
                                            + " the role policy that is not limited to sites.")
                            .problem());
        }
        if (!actor.hasAny(OF_THE_WORKSHOP)) {
            return Optional.of(RefusedException.notAllowed("The key " + actor.name()
                            + " writes policies and sends policy.adopted alone. Send the other events of a case with a key of"
                            + " the workshop.")
                    .problem());
        }
        return event.type() == EntryType.DEPARTURE_RECORDED ? departure(event, reference, beside) : Optional.empty();
    }

    private static boolean mayMove(Actor actor) {
        return actor.hasAny(EnumSet.of(Role.POLICY)) && actor.sites() == null;
    }

    private Optional<Problem> departure(IncomingEvent event, String reference, Collection<IncomingEvent> beside) {
        String sent = event.data().path("clause").asText();
        ClauseCode clause = Arrays.stream(ClauseCode.values())
                .filter(known -> known.toString().equals(sent))
                .findFirst()
                .orElse(null);
        Policy policy = policyOf(reference, beside).orElse(null);
        if (clause == null || policy == null) {
            return Optional.empty();
        }
        return Departures.whyNot(clause, policy)
                .map(why -> RefusedException.because(
                                Reason.INVALID_PAYLOAD,
                                policy.locked().contains(clause) ? "clause-locked" : "clause-not-departed-from",
                                "The site can't depart from the clause '" + clause + "'; see the causes.",
                                List.of(new Problem.Cause(
                                        "/data/clause",
                                        "`clause` is \"" + clause + "\": " + why
                                                + ". Follow the policy, or ask the chain to unlock the clause.")))
                        .problem());
    }

    /** The policy that the case is judged by, or will be by a presentation sent along; empty where none is known yet. */
    private Optional<Policy> policyOf(String reference, Collection<IncomingEvent> beside) {
        StoredCase stored = cases.find(reference).orElse(null);
        String code = stored == null ? null : stored.columns().site();
        String judgedBy = stored == null ? null : stored.policy();
        if (code != null && judgedBy != null) {
            int blank = judgedBy.lastIndexOf(' ');
            int version = Integer.parseInt(judgedBy.substring(blank + 1));
            return Optional.of(policies.policyFor(
                    code,
                    region(code),
                    LocalDate.MAX,
                    null,
                    new PolicyAdopted(judgedBy.substring(0, blank), version, "", "")));
        }
        return beside.stream()
                .filter(event -> event.type() == EntryType.VEHICLE_PRESENTED)
                .findFirst()
                .flatMap(event -> sites.find(event.data().path("site").asText())
                        .map(site -> policies.policyFor(
                                site.site(), site.region(), day(event.time(), site), event.time(), null)));
    }

    private @Nullable String region(String site) {
        return sites.find(site).map(Site::region).orElse(null);
    }

    private static LocalDate day(OffsetDateTime moment, Site site) {
        return moment.atZoneSameInstant(site.zone()).toLocalDate();
    }
}

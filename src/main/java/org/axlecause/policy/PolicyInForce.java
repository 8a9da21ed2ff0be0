package org.axlecause.policy;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Optional;
import org.axlecause.facts.Policy;
import org.axlecause.facts.PolicyAdopted;
import org.axlecause.judgement.PolicyChoice;
import org.axlecause.shared.Recent;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/**
 * Hands out the policies by which cases are judged; a wrong baseline stops the start. A merged version never changes, so
 * that each is merged once and kept while there is room; the timetable of a tenant is read again as soon as a later
 * publication could matter.
 */
@Startup
@ApplicationScoped
class PolicyInForce implements PolicyChoice {

    private static final int MOST_KEPT = 1_000;
    private static final int MOST_TIMETABLES = 100;

    private final Policy baseline = PolicyFile.baseline();
    private final PolicyVersionStore versions;
    private final TenantTransaction transaction;
    private final Clock clock;
    private final Recent<Merged, Policy> kept = new Recent<>(MOST_KEPT);
    private final Recent<String, PolicyTimetable> timetables = new Recent<>(MOST_TIMETABLES);

    PolicyInForce(PolicyVersionStore versions, TenantTransaction transaction, Clock clock) {
        this.versions = versions;
        this.transaction = transaction;
        this.clock = clock;
    }

    @Produces
    @Singleton
    Policy policy() {
        return baseline;
    }

    @Override
    public Policy policyFor(
            @Nullable String site,
            @Nullable String region,
            LocalDate day,
            @Nullable OffsetDateTime presented,
            @Nullable PolicyAdopted adopted) {
        Optional<Policy> moved =
                adopted == null ? Optional.empty() : version(adopted.policy(), adopted.version(), region, site);
        if (moved.isPresent() || site == null) {
            return moved.orElse(baseline);
        }
        Optional<PolicyVersionStore.Key> inEffect = presented == null
                ? versions.inEffect(site, day)
                : timetable(presented).inEffect(site, day, presented);
        return inEffect.flatMap(key -> version(key.name(), key.version(), region, site))
                .orElse(baseline);
    }

    private PolicyTimetable timetable(OffsetDateTime moment) {
        PolicyTimetable known = timetables.find(transaction.tenant());
        return known != null && known.isSureOf(moment)
                ? known
                : timetables.keep(transaction.tenant(), versions.timetable(OffsetDateTime.now(clock)));
    }

    /** One version merged for a site; empty where it is not published. */
    Optional<Policy> version(String name, int version, @Nullable String region, @Nullable String site) {
        if (name.equals(baseline.name())) {
            return version == baseline.version() ? Optional.of(baseline) : Optional.empty();
        }
        Merged key = new Merged(transaction.tenant(), name, version, region, site);
        Policy found = kept.find(key);
        if (found != null) {
            return Optional.of(found);
        }
        return versions.find(name, version)
                .map(published -> kept.keep(
                        key, MergedPolicy.of(published.document(), region, site).toPolicy(name, version, baseline)));
    }

    /** What a merged version depends on. */
    private record Merged(
            String tenant,
            String name,
            int version,
            @Nullable String region,
            @Nullable String site) {}
}

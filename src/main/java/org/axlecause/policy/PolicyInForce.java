package org.axlecause.policy;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
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
 * that each is merged once and kept while there is room.
 */
@Startup
@ApplicationScoped
class PolicyInForce implements PolicyChoice {

    private static final int MOST_KEPT = 1_000;

    private final Policy baseline = PolicyFile.baseline();
    private final PolicyVersionStore versions;
    private final TenantTransaction transaction;
    private final Recent<Merged, Policy> kept = new Recent<>(MOST_KEPT);

    PolicyInForce(PolicyVersionStore versions, TenantTransaction transaction) {
        this.versions = versions;
        this.transaction = transaction;
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
        return versions.inEffect(site, day, presented)
                .flatMap(key -> version(key.name(), key.version(), region, site))
                .orElse(baseline);
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

package org.axlecause.policy;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.axlecause.shared.TenantTransaction;

/** The published versions of a tenant's policies; a version never changes. */
@ApplicationScoped
public class PolicyVersionStore implements PanacheRepositoryBase<PolicyVersionEntity, PolicyVersionEntity.Key> {

    private final TenantTransaction transaction;
    private final Clock clock;

    PolicyVersionStore(TenantTransaction transaction, Clock clock) {
        this.transaction = transaction;
        this.clock = clock;
    }

    /** The version in effect on a day: the highest of those that took effect by then. */
    public Optional<PolicyVersion> effective(String name, LocalDate day) {
        return find(
                        "tenant = ?1 and name = ?2 and effectiveFrom <= ?3 order by effectiveFrom desc, version desc",
                        transaction.tenant(),
                        name,
                        day)
                .firstResultOptional()
                .map(PolicyVersionEntity::toPolicyVersion);
    }

    /** One version of a policy. */
    public Optional<PolicyVersion> find(String name, int version) {
        return findByIdOptional(new PolicyVersionEntity.Key(transaction.tenant(), name, version))
                .map(PolicyVersionEntity::toPolicyVersion);
    }

    /** Every version of a policy, newest first. */
    public List<PolicyVersion> versions(String name) {
        return list("tenant = ?1 and name = ?2 order by version desc", transaction.tenant(), name).stream()
                .map(PolicyVersionEntity::toPolicyVersion)
                .toList();
    }

    /** Publishes a document as the policy's next version. */
    public PolicyVersion publish(String name, LocalDate effectiveFrom, String document, String publishedBy) {
        List<PolicyVersion> before = versions(name);
        PolicyVersionEntity entity = new PolicyVersionEntity();
        entity.tenant = transaction.tenant();
        entity.name = name;
        entity.version = before.isEmpty() ? 1 : before.get(0).version() + 1;
        entity.effectiveFrom = effectiveFrom;
        entity.document = document;
        entity.publishedAt = OffsetDateTime.now(clock);
        entity.publishedBy = publishedBy;
        persist(entity);
        flush();
        return entity.toPolicyVersion();
    }
}

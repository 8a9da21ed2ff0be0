package org.axlecause.access;

import com.fasterxml.jackson.core.JsonProcessingException;
import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.sql.ResultSet;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.Optional;
import org.axlecause.facts.PriceList;
import org.axlecause.shared.Json;
import org.axlecause.shared.Recent;
import org.axlecause.shared.TenantTransaction;

/** The price lists of a tenant's sites; a new list is a new version, and old versions stay. */
@ApplicationScoped
public class PriceListStore implements PanacheRepositoryBase<PriceListEntity, PriceListEntity.Key> {

    private static final String NEWEST = "SELECT max(version) FROM price_list WHERE tenant_id = ? AND site = ?";

    private static final int MOST_KEPT = 200;

    private final TenantTransaction transaction;
    private final Clock clock;
    private final Recent<PriceListEntity.Key, PriceList> kept = new Recent<>(MOST_KEPT);

    PriceListStore(TenantTransaction transaction, Clock clock) {
        this.transaction = transaction;
        this.clock = clock;
    }

    /** The newest list of a site. */
    public Optional<PriceList> newest(String site) {
        return newestVersion(site).flatMap(version -> find(site, version));
    }

    /** The version of a site's newest list; empty where it has none. */
    public Optional<Integer> newestVersion(String site) {
        return transaction.ask(
                NEWEST,
                results -> {
                    try (ResultSet row = results.next()) {
                        row.next();
                        return Optional.ofNullable(row.getObject(1, Integer.class));
                    }
                },
                transaction.tenant(),
                site);
    }

    /** The list that held at that moment: the newest made by then, or the first where none was. */
    public Optional<PriceList> at(String site, OffsetDateTime moment) {
        return find(
                        "tenant = ?1 and site = ?2 and (createdAt <= ?3 or version = 1) order by version desc",
                        transaction.tenant(),
                        site,
                        moment)
                .firstResultOptional()
                .map(PriceListStore::read);
    }

    /** One version of a site's list; it never changes, so that those of late are kept. */
    public Optional<PriceList> find(String site, int version) {
        PriceListEntity.Key key = new PriceListEntity.Key(transaction.tenant(), site, version);
        PriceList known = kept.find(key);
        return known != null ? Optional.of(known) : findByIdOptional(key).map(entity -> kept.keep(key, read(entity)));
    }

    /** Keeps the list as its site's next version and returns it with that version. */
    public PriceList add(PriceList list, String createdBy) {
        int version = newestVersion(list.site()).orElse(0) + 1;
        PriceList numbered = new PriceList(
                list.site(),
                version,
                list.currency(),
                list.hourlyRate(),
                list.taxRate(),
                list.parts(),
                list.hours(),
                list.alternatives());
        PriceListEntity entity = new PriceListEntity();
        entity.tenant = transaction.tenant();
        entity.site = list.site();
        entity.version = version;
        entity.document = write(numbered);
        entity.createdAt = OffsetDateTime.now(clock);
        entity.createdBy = createdBy;
        persist(entity);
        flush();
        return numbered;
    }

    private static PriceList read(PriceListEntity entity) {
        try {
            return Json.mapper().readValue(entity.document, PriceList.class);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("A stored price list can't be read", e);
        }
    }

    private static String write(PriceList list) {
        try {
            return Json.mapper().writeValueAsString(list);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("A price list is plain JSON", e);
        }
    }
}

package org.axlecause.fleet;

import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.enterprise.event.Observes;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.ZoneId;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.axlecause.access.Actor;
import org.axlecause.access.PriceListStore;
import org.axlecause.access.Role;
import org.axlecause.access.Site;
import org.axlecause.access.SiteStore;
import org.axlecause.access.TenantStore;
import org.axlecause.facts.PriceList;
import org.axlecause.facts.ScopeItem;
import org.axlecause.intake.AcceptBatch;
import org.axlecause.shared.TenantTransaction;
import org.axlecause.shared.YamlFile;
import org.axlecause.shared.YamlNode;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/** Puts an invented chain of workshops into an empty embedded database, so that there is something to look at. */
@ApplicationScoped
class DemoChain {

    private static final Logger LOG = Logger.getLogger("axlecause");
    private static final int AFTER_THE_TENANT = 20;
    private static final String CHAIN = "demo/chain.yaml";

    private final boolean wanted;
    private final boolean embedded;
    private final TenantTransaction transaction;
    private final TenantStore tenants;
    private final SiteStore sites;
    private final PriceListStore priceLists;
    private final AcceptBatch acceptBatch;

    DemoChain(
            @ConfigProperty(name = "axlecause.demo") boolean wanted,
            @ConfigProperty(name = "axlecause.database.embedded", defaultValue = "false") boolean embedded,
            TenantTransaction transaction,
            TenantStore tenants,
            SiteStore sites,
            PriceListStore priceLists,
            AcceptBatch acceptBatch) {
        this.wanted = wanted;
        this.embedded = embedded;
        this.transaction = transaction;
        this.tenants = tenants;
        this.sites = sites;
        this.priceLists = priceLists;
        this.acceptBatch = acceptBatch;
    }

    @ActivateRequestContext
    void atStart(@Observes @Priority(AFTER_THE_TENANT) StartupEvent event) {
        if (!wanted || !embedded) {
            return;
        }
        YamlNode chain = YamlFile.onClassPath(CHAIN).root();
        String tenant = chain.text("tenant");
        boolean empty = transaction.call(tenant, () -> sites.all().isEmpty());
        if (!empty) {
            return;
        }
        transaction.run(tenant, () -> {
            tenants.open(tenant, chain.text("name"));
            chain.items("sites").forEach(site -> add(chain, site));
        });
        Actor actor = new Actor(tenant, "demo", Set.of(Role.ADMIN), null);
        int cases = 0;
        for (String name : chain.texts("cases")) {
            acceptBatch.accept(resource("demo/cases/" + name + ".json"), actor);
            cases++;
        }
        LOG.infof("Put the invented chain '%s' with %d cases into the empty database", chain.text("name"), cases);
    }

    private void add(YamlNode chain, YamlNode site) {
        Site added = sites.save(new Site(
                site.text("code"),
                site.text("name"),
                site.text("region"),
                ZoneId.of(site.text("time-zone")),
                site.text("currency"),
                site.text("regime"),
                0));
        BigDecimal factor = site.decimal("price-factor");
        Map<ScopeItem, BigDecimal> parts = new EnumMap<>(ScopeItem.class);
        for (YamlNode part : chain.items("parts")) {
            parts.put(
                    part.code("item", ScopeItem.class),
                    part.decimal("price").multiply(factor).setScale(2, RoundingMode.HALF_EVEN));
        }
        SortedMap<String, BigDecimal> hours = new TreeMap<>();
        for (YamlNode operation : chain.items("hours")) {
            hours.put(operation.text("operation"), operation.decimal("hours"));
        }
        priceLists.add(
                new PriceList(
                        added.site(),
                        0,
                        added.currency(),
                        site.decimal("hourly-rate"),
                        site.decimal("tax-rate"),
                        parts,
                        hours),
                "demo");
    }

    private static byte[] resource(String name) {
        try (InputStream in = Thread.currentThread().getContextClassLoader().getResourceAsStream(name)) {
            return Objects.requireNonNull(in, name).readAllBytes();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}

package org.axlecause.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.time.ZoneId;
import java.util.Map;
import java.util.UUID;
import org.axlecause.facts.PriceList;
import org.axlecause.facts.ScopeItem;
import org.axlecause.shared.TenantTransaction;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class SiteStoreTest {

    private static final Site QUAY_STREET =
            new Site("quay-street", "Quay Street", null, ZoneId.of("Europe/London"), "GBP", "gb-annual", 1);

    @Inject
    TenantTransaction transaction;

    @Inject
    TenantStore tenants;

    @Inject
    SiteStore sites;

    @Inject
    PriceListStore priceLists;

    private final String tenant = "s-" + UUID.randomUUID().toString().substring(0, 13);
    private final String other = "o-" + UUID.randomUUID().toString().substring(0, 13);

    @BeforeEach
    void openTenants() {
        tenants.open(tenant, "Chain");
        tenants.open(other, "Other chain");
    }

    @Test
    void a_site_is_found_as_it_was_kept() {
        transaction.run(tenant, () -> assertThat(sites.save(QUAY_STREET)).isEqualTo(QUAY_STREET));

        transaction.run(tenant, () -> assertThat(sites.find("quay-street")).contains(QUAY_STREET));
        transaction.run(tenant, () -> assertThat(sites.all()).containsExactly(QUAY_STREET));
        transaction.run(tenant, () -> assertThat(sites.find("hill-mill")).isEmpty());
    }

    @Test
    void a_changed_site_has_a_higher_version() {
        transaction.run(tenant, () -> sites.save(QUAY_STREET));
        Site moved =
                new Site("quay-street", "Quay Street", "north", ZoneId.of("Europe/Dublin"), "EUR", "eu-periodic", 1);

        transaction.run(tenant, () -> sites.save(moved));

        transaction.run(
                tenant,
                () -> assertThat(sites.find("quay-street"))
                        .contains(new Site(
                                "quay-street",
                                "Quay Street",
                                "north",
                                ZoneId.of("Europe/Dublin"),
                                "EUR",
                                "eu-periodic",
                                2)));
    }

    @Test
    void two_tenants_may_have_a_site_of_one_name() {
        transaction.run(tenant, () -> sites.save(QUAY_STREET));
        transaction.run(other, () -> assertThat(sites.find("quay-street")).isEmpty());
        transaction.run(
                other,
                () -> sites.save(
                        new Site("quay-street", "Elsewhere", null, ZoneId.of("UTC"), "EUR", "eu-periodic", 1)));

        transaction.run(tenant, () -> assertThat(sites.all()).containsExactly(QUAY_STREET));
    }

    @Test
    void every_price_list_stays_under_its_version() {
        transaction.run(tenant, () -> sites.save(QUAY_STREET));
        PriceList first = transaction.call(tenant, () -> priceLists.add(prices("60.00"), "open"));
        PriceList second = transaction.call(tenant, () -> priceLists.add(prices("64.50"), "open"));

        assertThat(first.version()).isEqualTo(1);
        assertThat(second.version()).isEqualTo(2);
        transaction.run(
                tenant, () -> assertThat(priceLists.newest("quay-street")).contains(second));
        transaction.run(
                tenant, () -> assertThat(priceLists.find("quay-street", 1)).contains(first));
        transaction.run(
                other, () -> assertThat(priceLists.newest("quay-street")).isEmpty());
    }

    @Test
    void a_price_list_needs_its_site() {
        assertThatThrownBy(() -> transaction.run(tenant, () -> priceLists.add(prices("60.00"), "open")))
                .hasStackTraceContaining("price_list_tenant_id_site_fkey");
    }

    @Test
    void outside_a_tenants_transaction_no_entity_is_read() {
        assertThatThrownBy(() -> sites.all()).isInstanceOf(IllegalStateException.class);
    }

    private static PriceList prices(String hourlyRate) {
        return new PriceList(
                "quay-street",
                1,
                "GBP",
                new BigDecimal(hourlyRate),
                new BigDecimal("0.20"),
                Map.of(ScopeItem.SHOE_SET, new BigDecimal("41.30")),
                Map.of("renew shoe-set", new BigDecimal("1.4")));
    }
}

package org.axlecause.casefile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.casefile.Cases.aTenant;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.axlecause.shared.TenantTransaction;
import org.junit.jupiter.api.Test;

@QuarkusTest
class VehicleIdentityStoreTest {

    private static final PersonalValue PLATE = new PersonalValue("registration", "AX12 CRV");

    @Inject
    TenantTransaction transaction;

    @Inject
    VehicleIdentityStore identities;

    private final String tenant = aTenant();

    @Test
    void a_returning_vehicle_has_the_token_it_had_before() {
        String first = token(tenant, PLATE);

        assertThat(token(tenant, PLATE)).isEqualTo(first).matches("[0-9a-f]{32}");
        assertThat(token(tenant, new PersonalValue("registration", "ax12-crv"))).isEqualTo(first);
        assertThat(token(tenant, new PersonalValue("vin", "AX12 CRV"))).isNotEqualTo(first);
    }

    @Test
    void tenants_share_no_token() {
        assertThat(token(tenant, PLATE)).isNotEqualTo(token(aTenant(), PLATE));
    }

    @Test
    void the_original_opens_until_it_is_erased() {
        String token = token(tenant, PLATE);

        assertThat(transaction.call(tenant, () -> identities.original(token).map(PersonalValue::text)))
                .contains("AX12 CRV");
        assertThat(transaction.call(tenant, () -> identities.erase(token))).isTrue();
        assertThat(transaction.call(tenant, () -> identities.original(token).map(PersonalValue::text)))
                .isEmpty();
        assertThat(transaction.call(tenant, () -> identities.erase(token))).isFalse();
    }

    @Test
    void no_stored_byte_shows_the_original() {
        token(tenant, PLATE);

        byte[] stored = transaction.call(
                tenant,
                () -> transaction.jdbc((connection, bound) -> {
                    try (PreparedStatement query =
                            connection.prepareStatement("SELECT original FROM vehicle_identity WHERE tenant_id = ?")) {
                        query.setString(1, bound);
                        try (ResultSet row = query.executeQuery()) {
                            row.next();
                            return row.getBytes(1);
                        }
                    }
                }));

        assertThat(new String(stored, StandardCharsets.ISO_8859_1))
                .doesNotContain("AX12")
                .doesNotContain("CRV");
        assertThat(stored).hasSize(12 + 8 + 16);
    }

    @Test
    void two_that_bring_the_same_new_vehicles_at_once_agree_on_the_tokens() throws Exception {
        List<PersonalValue> values = IntStream.range(0, 20)
                .mapToObj(number -> new PersonalValue("registration", "P" + number))
                .toList();
        ExecutorService threads = Executors.newFixedThreadPool(4);
        try {
            Callable<Object> all = () -> transaction.call(tenant, () -> identities.tokens(values));

            List<Future<Object>> answers = threads.invokeAll(List.of(all, all, all, all));

            Object first = answers.get(0).get();
            for (Future<Object> answer : answers) {
                assertThat(answer.get()).isEqualTo(first);
            }
        } finally {
            threads.shutdown();
        }
    }

    private String token(String owner, PersonalValue value) {
        return transaction.call(owner, () -> identities.tokens(List.of(value))).get(value);
    }
}

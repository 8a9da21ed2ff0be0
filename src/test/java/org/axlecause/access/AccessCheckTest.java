package org.axlecause.access;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.axlecause.shared.EndedAtStartException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class AccessCheckTest {

    @ParameterizedTest
    @ValueSource(strings = {"127.0.0.1", "127.0.1.1", "localhost", "::1", "[::1]"})
    void open_access_may_listen_on_loopback(String host) {
        assertThatCode(() -> AccessCheck.check(AccessMode.OPEN, host)).doesNotThrowAnyException();
    }

    @ParameterizedTest
    @ValueSource(strings = {"0.0.0.0", "::", "192.168.1.20", "127.0.0.1.example.org", "workshop.example.org", ""})
    void open_access_refuses_every_other_address_with_a_remedy(String host) {
        assertThatThrownBy(() -> AccessCheck.check(AccessMode.OPEN, host))
                .isInstanceOf(EndedAtStartException.class)
                .hasMessageContaining("AXLECAUSE_ACCESS=keys");
    }

    @ParameterizedTest
    @ValueSource(strings = {"0.0.0.0", "127.0.0.1"})
    void with_keys_any_address_will_do(String host) {
        assertThatCode(() -> AccessCheck.check(AccessMode.KEYS, host)).doesNotThrowAnyException();
    }
}

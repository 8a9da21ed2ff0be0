package org.axlecause.access;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ApiKeyTest {

    @Test
    void a_key_reads_back_as_it_was_made() {
        ApiKey key = ApiKey.made();

        assertThat(key.text()).matches("axc_[0-9A-Za-z]{16}_[0-9A-Za-z]{43}_[0-9A-Za-z]{6}");
        assertThat(ApiKey.read(key.text()))
                .hasValueSatisfying(
                        read -> assertThat(read).returns(key.id(), ApiKey::id).returns(key.hash(), ApiKey::hash));
    }

    /** CRC-32 of "123456789" is CBF43926, its check value in the catalogues; in base 62 that is 3jZRME. */
    @Test
    void the_check_sum_is_crc_32_in_base_62() {
        assertThat(ApiKey.check("123456789")).isEqualTo("3jZRME");
    }

    @Test
    void one_changed_letter_is_noticed() {
        String key = ApiKey.made().text();
        char last = key.charAt(30);
        String changed = key.substring(0, 30) + (last == 'a' ? 'b' : 'a') + key.substring(31);

        assertThat(ApiKey.read(changed)).isEmpty();
        assertThat(ApiKey.read("")).isEmpty();
        assertThat(ApiKey.read(key + "0")).isEmpty();
    }

    @Test
    void no_two_keys_are_alike_and_a_log_shows_no_secret() {
        ApiKey key = ApiKey.made();

        assertThat(ApiKey.made().text()).isNotEqualTo(key.text());
        assertThat(key.toString()).isEqualTo("axc_" + key.id());
    }
}

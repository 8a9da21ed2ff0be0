package org.axlecause.intake;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import org.axlecause.facts.EntryType;
import org.axlecause.shared.Json;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** ISO 3779 for the form; 49 CFR 565.15 for the check digit, whose usual examples are the first two numbers. */
class VinTest {

    @ParameterizedTest
    @CsvSource({
        "1M8GDM9AXKP042788, true, true",
        "11111111111111111, true, true",
        "1M8GDM9A1KP042788, true, false",
        "WCVP0RTAL00012345, true, false",
        "1M8GDM9AXKP04278, false, ",
        "1M8GDM9AXKP0427888, false, ",
        "1M8GDM9AXKP04278O, false, ",
        "1m8gdm9axkp042788, false, "
    })
    void form_and_check_digit_are_told_apart(String number, boolean form, Boolean check) {
        assertThat(Vin.hasForm(number)).isEqualTo(form);
        if (form) {
            assertThat(Vin.hasItsCheckDigit(number)).isEqualTo(check);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "1M8GDM9AXKP042788, 0, 0",
        "1M8GDM9A1KP042788, 1, 0",
        "5M8GDM9A1KP042788, 1, 0",
        "6M8GDM9A1KP042788, 0, 1",
        "WCVP0RTAL00012345, 0, 1",
        "KX51 PQR, 1, 0"
    })
    void a_check_digit_that_does_not_fit_is_wrong_in_north_america_and_odd_elsewhere(String number, int wrong, int odd)
            throws IOException {
        JsonNode data = Json.mapper().readTree("{\"vehicle\": {\"vin\": \"" + number + "\"}}");

        assertThat(ContentCheck.causes(EntryType.VEHICLE_PRESENTED, data)).hasSize(wrong);
        assertThat(ContentCheck.warnings(EntryType.VEHICLE_PRESENTED, data)).hasSize(odd);
    }

    @Test
    void no_message_repeats_the_number() throws IOException {
        for (String number : new String[] {"1M8GDM9A1KP042788", "WCVP0RTAL00012345", "KX51 PQR"}) {
            JsonNode data = Json.mapper().readTree("{\"vehicle\": {\"vin\": \"" + number + "\"}}");

            assertThat(ContentCheck.causes(EntryType.VEHICLE_PRESENTED, data).toString()
                            + ContentCheck.warnings(EntryType.VEHICLE_PRESENTED, data))
                    .doesNotContain(number);
        }
    }
}

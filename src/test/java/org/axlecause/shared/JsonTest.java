package org.axlecause.shared;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.math.BigDecimal;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Place;
import org.axlecause.facts.Side;
import org.axlecause.facts.Stage;
import org.junit.jupiter.api.Test;

class JsonTest {

    private static final Figure FIGURE = new Figure(
            FigureKind.PEAK,
            new EntryId("/sites/quay-street", "rt-1"),
            Stage.ARRIVAL,
            BrakeSystem.SERVICE,
            Place.ofWheel(2, Side.LEFT),
            new BigDecimal("1E+3"),
            null,
            true,
            null);

    @Test
    void a_place_is_written_by_its_members_alone_and_codes_in_kebab_case() throws JsonProcessingException {
        assertThat(Json.mapper().writeValueAsString(FIGURE))
                .isEqualTo("{\"kind\":\"peak\",\"test\":{\"source\":\"/sites/quay-street\",\"id\":\"rt-1\"},"
                        + "\"stage\":\"arrival\",\"brake\":\"service\",\"place\":{\"axle\":2,\"side\":\"left\"},"
                        + "\"value\":1000,\"observable\":true}");
    }

    @Test
    void what_is_written_is_read_back_as_the_same_value() throws JsonProcessingException {
        Figure read = Json.mapper().readValue(Json.mapper().writeValueAsString(FIGURE), Figure.class);

        assertThat(read)
                .usingComparatorForType(BigDecimal::compareTo, BigDecimal.class)
                .usingRecursiveComparison()
                .isEqualTo(FIGURE);
    }
}

package org.axlecause.facts;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class LineKeyTest {

    @Test
    void the_identifier_of_a_line_is_read_back_for_every_action_and_item() {
        for (ScopeAction action : ScopeAction.values()) {
            for (ScopeItem item : ScopeItem.values()) {
                LineKey line = new LineKey(action, item, Place.ofWheel(2, Side.LEFT));

                assertThat(LineKey.ofId(line.id())).isEqualTo(line);
            }
        }
        assertThat(List.of(
                        "renew", "renew-", "renew-drum", "renew-drum-", "renew-drum-axle-2-middle", "", "drum-vehicle"))
                .allSatisfy(id -> assertThat(LineKey.ofId(id)).isNull());
    }
}

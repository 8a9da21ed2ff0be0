package org.axlecause.outbound;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Against the table of the Standard Webhooks specification 1.0.0, section on deliverability. */
class RetryTableTest {

    private static final List<String> TABLE =
            List.of("PT5S", "PT5M", "PT30M", "PT2H", "PT5H", "PT10H", "PT14H", "PT20H", "PT24H");

    @Test
    void each_wait_is_that_of_the_table_and_up_to_a_tenth_more() {
        for (int attempt = 1; attempt <= TABLE.size(); attempt++) {
            Duration wait = Duration.parse(TABLE.get(attempt - 1));
            for (int draw = 0; draw < 100; draw++) {
                assertThat(RetryTable.waitAfter(attempt, new UUID(0, draw)).orElseThrow())
                        .as("wait after attempt %d", attempt)
                        .isBetween(wait, wait.plus(wait.dividedBy(10)));
            }
        }
    }

    @Test
    void after_the_tenth_attempt_there_is_no_other() {
        assertThat(RetryTable.waitAfter(10, new UUID(0, 1))).isEmpty();
    }

    @Test
    void events_that_failed_together_come_back_apart() {
        Set<Duration> waits = new HashSet<>();
        for (int draw = 0; draw < 100; draw++) {
            waits.add(RetryTable.waitAfter(3, new UUID(0, draw)).orElseThrow());
        }

        assertThat(waits).hasSizeGreaterThan(5);
    }
}

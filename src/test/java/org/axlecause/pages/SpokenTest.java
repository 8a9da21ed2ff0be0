package org.axlecause.pages;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.ZoneId;
import java.util.Map;
import org.axlecause.shared.Json;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpokenTest {

    private static final JsonNode CASE = Json.read("""
            {"vehicle": {"axles": [{"number": 1}, {"number": 2}]},
             "workPlan": [{"id": "read-vehicle-data-vehicle"}, {"id": "renew-shoe-set-axle-2"}],
             "scope": [{"id": "clean-drum-axle-2", "action": "clean", "item": "drum", "place": {"axle": 2}}],
             "timeline": [{"source": "/sites/quay-street/lane-1", "id": "rt-1", "time": "2026-03-02T08:16:00Z",
                           "type": "org.axlecause.roller-test.recorded.v1"}]}
            """);

    private static final Spoken SPOKEN = new Spoken(
            new PlainWords(),
            Map.of("wheel-cylinder-leaking", "“A wheel cylinder leaks”"),
            CASE,
            ZoneId.of("Europe/London"));

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "/sites/quay-street/lane-1#rt-1 speaks of axle 3; the presented vehicle has 2."
                        + "|the roller test of 2 March 2026 at 08:16 speaks of axle 3 from the front; the presented vehicle has 2.",
                "The final test of axle 2 is no better|The final test of the rear axle is no better",
                "less likely now: wheel-cylinder-leaking at axle 2 right."
                        + "|less likely now: “A wheel cylinder leaks”, rear axle, right wheel.",
                "a lining soaked with brake fluid, axle 2 right|a lining soaked with brake fluid, rear axle, right wheel",
                "air let in, circuit 1|air let in, brake circuit 1",
                "the pedal pulses, vehicle|the pedal pulses, whole vehicle",
                "The step renew-shoe-set-axle-2 was reported not possible|The step 2 was reported not possible",
                "The line clean-drum-axle-2 waits|The line “Clean the brake drum, rear axle” waits",
                "Record what stood in the way as obstacle.met, and report the step again"
                        + "|Record what stood in the way, and report the step again",
                "a hold-down spring, run-out and anti-lock stay|a hold-down spring, run-out and anti-lock stay"
            })
    void a_sentence_names_things_as_people_do(String sentence, String spoken) {
        assertThat(SPOKEN.say(sentence)).isEqualTo(spoken);
    }
}

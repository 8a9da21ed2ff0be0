package org.axlecause.facts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.facts.FindingStage.AFTER_WORK;
import static org.axlecause.facts.FindingStage.AS_FOUND;
import static org.axlecause.facts.FindingStage.DURING_WORK;

import org.junit.jupiter.api.Test;

class PartStateTest {

    private static final Place LEFT = new Place(2, Side.LEFT, null, null);
    private static final Place RIGHT = new Place(2, Side.RIGHT, null, null);

    @Test
    void a_leak_found_later_ends_what_was_found_sound_after_the_work() {
        PartState sound = state(AFTER_WORK, Condition.SOUND, LEFT);

        assertThat(state(AFTER_WORK, Condition.LEAKING, LEFT).replaces(sound)).isTrue();
        assertThat(state(DURING_WORK, Condition.LEAKING, LEFT).replaces(sound)).isTrue();
        assertThat(state(AFTER_WORK, Condition.LEAKING, RIGHT).replaces(sound)).isFalse();
        assertThat(state(AFTER_WORK, Condition.DAMP, LEFT).replaces(sound)).isFalse();
    }

    @Test
    void a_fault_after_the_work_ends_only_with_a_sound_look_after_the_work() {
        PartState leaking = state(AFTER_WORK, Condition.LEAKING, LEFT);

        assertThat(state(AFTER_WORK, Condition.SOUND, LEFT).replaces(leaking)).isTrue();
        assertThat(state(DURING_WORK, Condition.SOUND, LEFT).replaces(leaking)).isFalse();
        assertThat(state(AFTER_WORK, Condition.NOT_ACCESSIBLE, LEFT).replaces(leaking))
                .isFalse();
    }

    @Test
    void what_was_found_before_the_work_keeps_speaking() {
        assertThat(state(AFTER_WORK, Condition.SOUND, LEFT).replaces(state(AS_FOUND, Condition.LEAKING, LEFT)))
                .isFalse();
    }

    private static PartState state(FindingStage stage, Condition condition, Place place) {
        return new PartState(
                new EntryId("/sites/quay-street", "f-1"),
                stage,
                Component.WHEEL_CYLINDER,
                condition,
                place,
                null,
                null,
                null);
    }
}

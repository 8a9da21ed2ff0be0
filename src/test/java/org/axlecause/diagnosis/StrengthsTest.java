package org.axlecause.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class StrengthsTest {

    private static final long SEED = 20260404L;

    @Test
    void strengths_are_told_in_the_order_of_their_signs_and_the_last_one_noted_holds() {
        Random random = new Random(SEED);
        Strengths strengths = new Strengths();
        Map<Integer, Double> noted = new TreeMap<>();
        for (int i = 0; i < 60; i++) {
            int sign = random.nextInt(40);
            double strength = random.nextDouble();
            strengths.put(sign, strength);
            noted.put(sign, strength);
        }

        Map<Integer, Double> told = new TreeMap<>();
        for (int at = 0; at < strengths.count(); at++) {
            assertThat(at == 0 || strengths.sign(at - 1) < strengths.sign(at)).isTrue();
            told.put(strengths.sign(at), strengths.value(at));
        }
        assertThat(told).as("strengths with seed %d", SEED).isEqualTo(noted);
        assertThat(strengths.count()).isEqualTo(noted.size());
        for (int sign = 0; sign < 40; sign++) {
            assertThat(strengths.of(sign)).isEqualTo(noted.getOrDefault(sign, 0.0));
        }
    }

    @Test
    void a_cause_of_which_nothing_is_noted_shows_nothing() {
        Strengths none = new Strengths();

        assertThat(none.isEmpty()).isTrue();
        assertThat(none.of(3)).isZero();
        assertThat(none.of(Signs.NONE)).isZero();
    }
}

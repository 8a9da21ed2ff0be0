package org.axlecause.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.diagnosis.Cases.MODEL;
import static org.axlecause.diagnosis.Cases.van;

import java.util.Arrays;
import java.util.List;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.Place;
import org.junit.jupiter.api.Test;

/** What the ties of a layout say is held against the causes of the model, pair by pair. */
class TiesTest {

    private static final List<Candidate> CANDIDATES = MODEL.candidates(van());
    private static final Ties TIES = MODEL.possibilities(van()).ties();

    @Test
    void causes_exclude_each_other_where_one_of_them_says_so_and_their_places_meet() {
        for (int later = 0; later < CANDIDATES.size(); later++) {
            for (int earlier = 0; earlier < later; earlier++) {
                assertThat(contains(earlier, TIES.excludedBefore(later)))
                        .as("%s and %s", CANDIDATES.get(earlier), CANDIDATES.get(later))
                        .isEqualTo(exclude(CANDIDATES.get(earlier), CANDIDATES.get(later)));
            }
        }
        assertThat(CANDIDATES).anyMatch(one -> CANDIDATES.stream().anyMatch(other -> exclude(one, other)));
    }

    @Test
    void a_cause_that_is_often_on_both_sides_is_tied_to_itself_at_the_other_wheel() {
        for (int number = 0; number < CANDIDATES.size(); number++) {
            Candidate candidate = CANDIDATES.get(number);
            Place other = candidate.place().opposite();
            boolean twins = MODEL.cause(candidate.code()).bothSides() != null;
            int twin = CANDIDATES.indexOf(new Candidate(candidate.code(), other));

            assertThat(TIES.twinsBefore(number))
                    .as("twins before %s", candidate)
                    .containsExactly(twins && twin >= 0 && twin < number ? new int[] {twin} : new int[0]);
            assertThat(contains(twin, TIES.neighboursOf(number)))
                    .as("%s beside %s", candidate, other)
                    .isEqualTo(twins && twin >= 0);
        }
    }

    private static boolean exclude(Candidate one, Candidate other) {
        boolean said = MODEL.cause(one.code()).excludes().contains(other.code())
                || MODEL.cause(other.code()).excludes().contains(one.code());
        return said && one.place().meets(other.place());
    }

    private static boolean contains(int number, int[] numbers) {
        return Arrays.stream(numbers).anyMatch(one -> one == number);
    }
}

package org.axlecause.facts;

import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Reads the form of a place that stands in identifiers. */
final class PlaceIds {

    private static final int LONGEST_NUMBER = 2;

    private PlaceIds() {}

    static @Nullable Place read(String id) {
        List<String> words = Arrays.asList(id.split("-", -1));
        Place place = new Reader(words.iterator()).place();
        return place != null && place.id().equals(id) ? place : null;
    }

    /** Walks over the words of an identifier. */
    private static final class Reader {

        private final Iterator<String> words;
        private @Nullable String word;

        private Reader(Iterator<String> words) {
            this.words = words;
            next();
        }

        private @Nullable Place place() {
            if ("vehicle".equals(word)) {
                return Place.VEHICLE;
            }
            Integer axle = numberAfter("axle");
            Side side = constant(Side.values(), Side::toString);
            Spot spot = constant(Spot.values(), Spot::toString);
            Integer circuit = numberAfter("circuit");
            return word == null ? new Place(axle, side, spot, circuit) : null;
        }

        private @Nullable Integer numberAfter(String label) {
            if (!label.equals(word)) {
                return null;
            }
            next();
            String digits = word;
            if (digits == null
                    || digits.isEmpty()
                    || digits.length() > LONGEST_NUMBER
                    || !digits.chars().allMatch(letter -> letter >= '0' && letter <= '9')) {
                return null;
            }
            next();
            return Integer.valueOf(digits);
        }

        private <T> @Nullable T constant(T[] constants, Function<T, String> code) {
            for (T constant : constants) {
                if (code.apply(constant).equals(word)) {
                    next();
                    return constant;
                }
            }
            return null;
        }

        private void next() {
            word = words.hasNext() ? words.next() : null;
        }
    }
}

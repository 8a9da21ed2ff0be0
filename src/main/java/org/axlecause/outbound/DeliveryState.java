package org.axlecause.outbound;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** How far a delivery has come. */
enum DeliveryState {
    /** It is due, or will be again. */
    PENDING,
    /** The endpoint has taken it. */
    DELIVERED,
    /** No further attempt is made unless it is replayed. */
    FAILED;

    /** The state with this code; empty when there is none. */
    static Optional<DeliveryState> of(String code) {
        return Stream.of(values())
                .filter(state -> state.toString().equals(code))
                .findFirst();
    }

    /** The code on the wire. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}

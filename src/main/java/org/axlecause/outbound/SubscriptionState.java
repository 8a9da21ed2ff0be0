package org.axlecause.outbound;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** Whether a subscription is told anything. */
enum SubscriptionState {
    /** It is told what happens. */
    ACTIVE,
    /** An admin has stopped it; what happens meanwhile isn't kept for it. */
    STOPPED,
    /** Its endpoint has answered that it is gone for good. */
    GONE,
    /** The last attempt at a delivery has failed. */
    FAILED;

    /** The state with this code; empty when there is none. */
    static Optional<SubscriptionState> of(String code) {
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

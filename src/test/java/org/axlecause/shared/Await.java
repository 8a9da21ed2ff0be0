package org.axlecause.shared;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;

/** Waits for what another process or thread is about to do; far longer than it takes, so that only a fault fails. */
public final class Await {

    private static final Duration LONGEST = Duration.ofMinutes(3);
    private static final int LOOK_AGAIN_MILLIS = 100;

    private Await() {}

    public static void until(String what, BooleanSupplier holds) {
        long deadline = System.nanoTime() + LONGEST.toNanos();
        while (!holds.getAsBoolean()) {
            assertThat(System.nanoTime()).as("time until %s", what).isLessThan(deadline);
            try {
                TimeUnit.MILLISECONDS.sleep(LOOK_AGAIN_MILLIS);
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }
    }
}

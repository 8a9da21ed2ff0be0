package org.axlecause.outbound;

import jakarta.enterprise.inject.Alternative;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** Stands still until a test moves it. */
@Alternative
@Singleton
public class VirtualClock extends Clock {

    public static final Instant START = Instant.parse("2026-03-02T12:00:00Z");

    private volatile Instant now = START;

    public void set(Instant moment) {
        now = moment;
    }

    public void pass(Duration time) {
        now = now.plus(time);
    }

    @Override
    public Instant instant() {
        return now;
    }

    @Override
    public ZoneId getZone() {
        return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
        return this;
    }
}

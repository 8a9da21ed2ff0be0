package org.axlecause.shared;

import java.time.Duration;

/**
 * What a bearer may still ask for.
 *
 * @param name what the quota is counted by
 * @param limit requests in a window
 * @param window length of the window
 * @param left requests that are left
 * @param untilNext how long until a request is free again where none is left, else until all are
 * @param exceeded whether this request was one too many
 */
public record Quota(String name, long limit, Duration window, long left, Duration untilNext, boolean exceeded) {}

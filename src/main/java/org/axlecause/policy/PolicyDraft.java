package org.axlecause.policy;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;

/**
 * A policy that is being written and judges nothing.
 *
 * @param name name of the policy
 * @param tag what it is told apart from its other states by
 * @param document its layers
 * @param authors everybody who has written on it
 * @param writtenAt when it was last written
 * @param writtenBy by whom
 */
public record PolicyDraft(
        String name,
        UUID tag,
        PolicyDocument document,
        List<String> authors,
        OffsetDateTime writtenAt,
        String writtenBy) {}

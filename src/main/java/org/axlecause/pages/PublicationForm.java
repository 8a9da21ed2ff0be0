package org.axlecause.pages;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The draft of a policy before it is published.
 *
 * @param name name of the policy
 * @param tag what tells the draft from its other states
 * @param authors who has written on it
 * @param since number of the newest version; null where this is the first
 * @param changes what it sets otherwise than that version
 * @param from first day, as it was typed
 * @param reason reason, as it was typed
 * @param wrong what keeps it from being published
 */
public record PublicationForm(
        String name,
        String tag,
        List<String> authors,
        @Nullable Integer since,
        List<String> changes,
        String from,
        String reason,
        List<String> wrong) {}

package org.axlecause.catalogue;

import java.util.Locale;
import org.axlecause.facts.Verified;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** How firmly a value of trade knowledge is known, in the words of a workshop. */
@Schema(
        description = "published: read in the named document; secondary: another text says that it stands there;"
                + " from-memory: of a document that was not at hand; common-practice: what the trade does;"
                + " judgement: a starting value to be tuned; derived: computed from other values.")
public enum KnowledgeStanding {
    PUBLISHED,
    SECONDARY,
    FROM_MEMORY,
    COMMON_PRACTICE,
    JUDGEMENT,
    DERIVED;

    static KnowledgeStanding of(Verified verified) {
        return switch (verified) {
            case READ -> PUBLISHED;
            case SECONDARY -> SECONDARY;
            case MEMORY -> FROM_MEMORY;
            case COMMON_PRACTICE -> COMMON_PRACTICE;
            case JUDGEMENT -> JUDGEMENT;
            case DERIVED -> DERIVED;
        };
    }

    /** The code on the wire. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}

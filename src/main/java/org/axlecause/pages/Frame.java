package org.axlecause.pages;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What stands around every page.
 *
 * @param section part of the pages that is marked as the present one; empty for none
 * @param bearer id of who is signed in; null where nobody is or nobody needs to
 * @param who what people call who is signed in; null where nobody is or nobody needs to
 * @param inside whether there is anything behind the menu for whoever looks: they are signed in, or nobody needs to be
 * @param maySend whether the bearer may send what was measured, found, decided or done
 * @param token what each form must carry
 * @param style address of the style sheet
 * @param script address of the script
 */
public record Frame(
        String section,
        @Nullable String bearer,
        @Nullable String who,
        boolean inside,
        boolean maySend,
        String token,
        String style,
        String script) {

    /** Id of the entry that one more form of this page makes. */
    public String newEntry() {
        return UUID.randomUUID().toString();
    }

    /** Whether this section is the present one. */
    public boolean isAt(String other) {
        return section.equals(other);
    }
}

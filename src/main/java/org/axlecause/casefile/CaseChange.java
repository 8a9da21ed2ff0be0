package org.axlecause.casefile;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a judgement has changed on its case.
 *
 * @param reference reference of the case
 * @param site code of its site; null while no vehicle was presented
 * @param version number of distinct events judged
 * @param status highest status that holds
 * @param changed members of the case document that differ from the one before, by name
 * @param verified whether the repair is proven now and was not before
 */
public record CaseChange(
        String reference, @Nullable String site, int version, String status, List<String> changed, boolean verified) {

    public CaseChange {
        changed = List.copyOf(changed);
    }

    /** The change from one document to the next. */
    static CaseChange between(DocumentDigest before, CaseColumns columns, String reference, DocumentDigest after) {
        return new CaseChange(
                reference,
                columns.site(),
                columns.version(),
                columns.status(),
                before.differences(after),
                after.verified() && !before.verified());
    }
}

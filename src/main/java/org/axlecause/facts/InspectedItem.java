package org.axlecause.facts;

import org.jspecify.annotations.Nullable;

/**
 * A deficiency for which the regime gives no figure: the inspector judges.
 *
 * @param deficiency the deficiency
 * @param brake brake it is about
 * @param severity class in the regime's scale once the inspector has found it; null where the regime names none
 * @param item number in the regime's document; null where it has none
 * @param verified how well item and class are verified
 * @param source document and section
 */
public record InspectedItem(
        DeficiencyCode deficiency,
        BrakeSystem brake,
        @Nullable DeficiencyClass severity,
        @Nullable String item,
        Verified verified,
        String source)
        implements Shown {

    @Override
    public String shown() {
        return (item == null ? "no item" : "item " + item) + " of " + source + ", which gives no figure"
                + verified.remark("item");
    }
}

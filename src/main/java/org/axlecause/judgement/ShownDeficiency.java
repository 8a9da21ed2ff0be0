package org.axlecause.judgement;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.math.BigDecimal;
import java.util.List;
import org.axlecause.facts.DeficiencyClass;
import org.axlecause.facts.DeficiencyCode;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.Place;
import org.axlecause.facts.Reason;
import org.axlecause.facts.Stage;
import org.jspecify.annotations.Nullable;

/**
 * A deficiency as the case document shows it.
 *
 * @param code what is deficient
 * @param item number in the regime's document
 * @param severity class in the regime's scale; left out where the inspector judges
 * @param place where
 * @param stage stage of the test
 * @param test identity of the test or finding
 * @param value the figure with unit
 * @param limit the limit that is broken
 * @param required the limit that the regime asks for, where the broken one only makes the class worse
 * @param probabilityNonConforming probability that the true value is beyond the limit
 * @param because grounds
 */
public record ShownDeficiency(
        DeficiencyCode code,
        @Nullable String item,
        @JsonProperty("class") @Nullable DeficiencyClass severity,
        Place place,
        @Nullable Stage stage,
        EntryId test,
        @Nullable Quantity value,
        @Nullable ShownLimit limit,
        @Nullable ShownLimit required,
        @Nullable BigDecimal probabilityNonConforming,
        List<Reason> because) {}

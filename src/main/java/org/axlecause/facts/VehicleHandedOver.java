package org.axlecause.facts;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The vehicle went back to its keeper.
 *
 * @param advised what the keeper was advised
 * @param refusalNoted whether a refusal was noted and shown to the keeper
 */
public record VehicleHandedOver(
        List<String> advised, @Nullable Boolean refusalNoted) implements Entry {

    public VehicleHandedOver {
        advised = List.copyOf(advised);
    }
}

package org.axlecause.diagnosis;

import java.util.Locale;
import org.axlecause.facts.Axle;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.Drive;
import org.axlecause.facts.Vehicle;
import org.jspecify.annotations.Nullable;

/** What a vehicle or an axle must have before a cause can be there; what is not known is taken to be there. */
public enum Trait {
    REAR_AXLE,
    DRIVEN_AXLE,
    ANTILOCK,
    REGENERATIVE,
    SPLIT_DIAGONAL,
    TWO_CIRCUITS;

    boolean holds(Vehicle vehicle, @Nullable Axle axle) {
        return switch (this) {
            case REAR_AXLE -> axle != null && axle.number() > 1;
            case DRIVEN_AXLE -> axle != null && driven(vehicle.drive(), axle);
            case ANTILOCK -> !Boolean.FALSE.equals(vehicle.antilock());
            case REGENERATIVE -> Boolean.TRUE.equals(vehicle.regenerative());
            case SPLIT_DIAGONAL -> vehicle.circuitSplit() == CircuitSplit.DIAGONAL;
            case TWO_CIRCUITS -> vehicle.circuitSplit() != null && vehicle.circuitSplit() != CircuitSplit.SINGLE;
        };
    }

    private static boolean driven(@Nullable Drive drive, Axle axle) {
        return drive == null || drive == Drive.ALL || (drive == Drive.FRONT) == (axle.number() == 1);
    }

    /** The word in the files. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}

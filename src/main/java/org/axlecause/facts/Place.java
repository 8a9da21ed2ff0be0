package org.axlecause.facts;

import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Where on the vehicle something is; what does not apply is left out.
 *
 * @param axle counted from the front, 1 upwards
 * @param side side of the vehicle
 * @param spot part of the wheel brake
 * @param circuit hydraulic circuit, 1 or 2
 */
public record Place(
        @Nullable Integer axle,
        @Nullable Side side,
        @Nullable Spot spot,
        @Nullable Integer circuit) implements Comparable<Place> {

    /** The vehicle as a whole. */
    public static final Place VEHICLE = new Place(null, null, null, null);

    /** A whole axle. */
    public static Place ofAxle(int axle) {
        return new Place(axle, null, null, null);
    }

    /** One wheel. */
    public static Place ofWheel(int axle, Side side) {
        return new Place(axle, side, null, null);
    }

    /** One part of one wheel brake. */
    public static Place ofSpot(int axle, Side side, Spot spot) {
        return new Place(axle, side, spot, null);
    }

    /** A hydraulic circuit. */
    public static Place ofCircuit(int circuit) {
        return new Place(null, null, null, circuit);
    }

    /** Reads the form that {@link #id()} writes; null where the text is none. */
    public static @Nullable Place ofId(String id) {
        return PlaceIds.read(id);
    }

    /** The place as part of an identifier, such as {@code axle-2-right-trailing} or {@code circuit-1}. */
    public String id() {
        return toString().replace(' ', '-');
    }

    /** The wheel of that side on the axle of this place. */
    public Place on(Side newSide) {
        return new Place(axle, newSide, null, null);
    }

    /** The left wheel of the axle of this place. */
    public Place left() {
        return on(Side.LEFT);
    }

    /** The right wheel of the axle of this place. */
    public Place right() {
        return on(Side.RIGHT);
    }

    /** Whether this is one wheel or a part of it. */
    public boolean isWheel() {
        return axle != null && side != null;
    }

    /** The wheel of this place: the same place without its spot and circuit. */
    public Place wheel() {
        return spot == null && circuit == null ? this : new Place(axle, side, null, null);
    }

    /** The axle of this place: the same place without side, spot and circuit. */
    public Place axlePlace() {
        return side == null && spot == null && circuit == null ? this : new Place(axle, null, null, null);
    }

    /** The other wheel of the axle; the place itself where no side is given. */
    public Place opposite() {
        return side == null ? this : new Place(axle, side == Side.LEFT ? Side.RIGHT : Side.LEFT, spot, circuit);
    }

    /** Whether the other place lies in this one: what this place leaves out may be anything there. */
    public boolean covers(Place other) {
        return (axle == null || axle.equals(other.axle))
                && (side == null || side == other.side)
                && (spot == null || spot == other.spot)
                && (circuit == null || circuit.equals(other.circuit));
    }

    /** Whether one of the two places lies in the other. */
    public boolean meets(Place other) {
        return covers(other) || other.covers(this);
    }

    /** Whether what is said of this place, an axle or a part of one, is said of all of the other place. */
    public boolean speaksForAllOf(Place other) {
        return axle != null && wheel().covers(other);
    }

    /** Whether both places are on the same wheel. */
    public boolean sameWheel(Place other) {
        return isWheel() && Objects.equals(axle, other.axle) && side == other.side;
    }

    /** Whether both are wheels, or parts of them, at the two ends of one axle. */
    public boolean isOpposite(Place other) {
        return isWheel() && other.isWheel() && sameAxle(other) && side != other.side;
    }

    /** Whether what is known of one speaks about the other: the same axle, or one of them is more than an axle. */
    public boolean sharesAxleWith(Place other) {
        return axle == null || other.axle == null || axle.equals(other.axle);
    }

    /** Whether both places are on the same axle. */
    public boolean sameAxle(Place other) {
        return axle != null && axle.equals(other.axle);
    }

    @Override
    public int compareTo(Place other) {
        int byAxle = Integer.compare(rank(axle), rank(other.axle));
        if (byAxle != 0) {
            return byAxle;
        }
        int bySide = Integer.compare(rank(side), rank(other.side));
        if (bySide != 0) {
            return bySide;
        }
        int bySpot = Integer.compare(rank(spot), rank(other.spot));
        return bySpot != 0 ? bySpot : Integer.compare(rank(circuit), rank(other.circuit));
    }

    /** What is left out comes first. */
    private static int rank(@Nullable Integer number) {
        return number == null ? Integer.MIN_VALUE : number;
    }

    @SuppressWarnings("EnumOrdinal") // Why: it is the order of the constants, and no ordinal leaves this comparison.
    private static int rank(@Nullable Enum<?> constant) {
        return constant == null ? -1 : constant.ordinal();
    }

    /** The place in words, such as {@code axle 2 right trailing}. */
    @Override
    public String toString() {
        if (equals(VEHICLE)) {
            return "vehicle";
        }
        StringBuilder words = new StringBuilder();
        if (axle != null) {
            words.append("axle ").append(axle);
        }
        if (side != null) {
            words.append(' ').append(side);
        }
        if (spot != null) {
            words.append(' ').append(spot);
        }
        if (circuit != null) {
            words.append(" circuit ").append(circuit);
        }
        return words.toString().strip();
    }
}

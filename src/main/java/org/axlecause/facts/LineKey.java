package org.axlecause.facts;

import org.jspecify.annotations.Nullable;

/**
 * What makes a scope line the same line over the life of a case.
 *
 * @param action what is done
 * @param item to what
 * @param place where
 */
public record LineKey(ScopeAction action, ScopeItem item, Place place) implements Shown, Comparable<LineKey> {

    private static final int NOT_THERE = -1;
    private static final ScopeItem[] NO_ITEMS = {};

    /** The identifier of the line, such as {@code renew-wheel-cylinder-axle-2-left}. */
    public String id() {
        return action + "-" + item + "-" + place.id();
    }

    /** Reads the identifier of a line; null where the text is none. */
    public static @Nullable LineKey ofId(String id) {
        for (ScopeAction action : ScopeAction.values()) {
            int afterAction = after(action.toString(), 0, id);
            for (ScopeItem item : afterAction == NOT_THERE ? NO_ITEMS : ScopeItem.values()) {
                int afterItem = after(item.toString(), afterAction, id);
                Place place = afterItem == NOT_THERE ? null : Place.ofId(id.substring(afterItem));
                if (place != null) {
                    return new LineKey(action, item, place);
                }
            }
        }
        return null;
    }

    /** Where an identifier goes on after a code and its hyphen. */
    private static int after(String code, int from, String id) {
        int end = from + code.length();
        return id.startsWith(code, from) && id.startsWith("-", end) ? end + 1 : NOT_THERE;
    }

    /** Whether a part is taken off and another one fitted. */
    public boolean isExchange() {
        return action == ScopeAction.RENEW || action == ScopeAction.FABRICATE || action == ScopeAction.REBUILD;
    }

    /** Whether the work opens the hydraulic system. */
    public boolean isOpeningHydraulics() {
        return switch (item) {
            case BLEED_NIPPLE -> true;
            case WHEEL_CYLINDER,
                    CALLIPER,
                    FLEXIBLE_HOSE,
                    BRAKE_PIPE,
                    PIPE_NUT,
                    MASTER_CYLINDER,
                    LOAD_SENSING_VALVE,
                    ANTILOCK_MODULATOR,
                    HYDRAULIC_SYSTEM -> isExchange();
            default -> false;
        };
    }

    /** Whether the work takes off or changes the shoes of a drum brake or what carries them. */
    public boolean isWorkOnShoes() {
        return action != ScopeAction.ADJUST
                && action != ScopeAction.MEASURE
                && switch (item) {
                    case SHOE_SET, HARDWARE_KIT, ADJUSTER, WHEEL_CYLINDER, BACK_PLATE -> true;
                    case DRUM -> isExchange();
                    default -> false;
                };
    }

    /** Whether the shoes have to come off the back plate for it. */
    public boolean isTakingShoesOff() {
        return action != ScopeAction.MEASURE
                && switch (item) {
                    case HARDWARE_KIT, WHEEL_CYLINDER, BACK_PLATE, HUB_SEAL, HUB_BEARING, ADJUSTER -> true;
                    case SHOE_SET -> isExchange();
                    default -> false;
                };
    }

    /** Whether a drum or a calliper has to come off for it. */
    public boolean isStripDown() {
        return action != ScopeAction.ADJUST
                && switch (item) {
                    case SHOE_SET,
                            DRUM,
                            HARDWARE_KIT,
                            ADJUSTER,
                            WHEEL_CYLINDER,
                            BACK_PLATE,
                            HUB_SEAL,
                            HUB_BEARING,
                            HUB_FACE,
                            PAD_SET,
                            DISC,
                            CALLIPER,
                            CALLIPER_CARRIER,
                            SLIDE_PIN_KIT,
                            PARKING_SHOE_SET -> true;
                    default -> false;
                };
    }

    /** Whether brake force may differ after the work, so that only a test on the rollers proves it. */
    public boolean isChangingForce() {
        return action != ScopeAction.MEASURE;
    }

    @Override
    public String shown() {
        return action + " " + item + " at " + place;
    }

    /** By place, then item, then action. */
    @Override
    public int compareTo(LineKey other) {
        int byPlace = place.compareTo(other.place);
        if (byPlace != 0) {
            return byPlace;
        }
        int byItem = item.compareTo(other.item);
        return byItem != 0 ? byItem : action.compareTo(other.action);
    }
}

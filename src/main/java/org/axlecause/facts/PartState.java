package org.axlecause.facts;

import org.jspecify.annotations.Nullable;

/**
 * State of a part by a finding on it; only the second call of the rule base sees it.
 *
 * @param entry identity of the finding's entry
 * @param stage when it was found
 * @param component the part
 * @param condition its state
 * @param place where
 * @param extent how far the condition has gone
 * @param agent liquid that soiled it
 * @param measurement measured value
 */
public record PartState(
        EntryId entry,
        FindingStage stage,
        Component component,
        Condition condition,
        Place place,
        @Nullable Extent extent,
        @Nullable Agent agent,
        @Nullable Measurement measurement)
        implements Shown {

    /** Whether the state is a fault; a trace of damp is none. */
    public boolean isFault() {
        return condition != Condition.SOUND && condition != Condition.NOT_ACCESSIBLE && condition != Condition.DAMP;
    }

    /** Whether this later state takes the place of an earlier one of the same part, made after the work. */
    public boolean replaces(PartState earlier) {
        if (earlier.stage != FindingStage.AFTER_WORK
                || earlier.component != component
                || !earlier.place.equals(place)) {
            return false;
        }
        return earlier.isFault()
                ? stage == FindingStage.AFTER_WORK && condition == Condition.SOUND
                : earlier.condition == Condition.SOUND && isFault();
    }

    /** The scope item that work on this part belongs to; null where none does. */
    public @Nullable ScopeItem item() {
        return itemOf(component);
    }

    /** The scope item that work on a part belongs to; null where none does. */
    public static @Nullable ScopeItem itemOf(Component component) {
        return switch (component) {
            case WHEEL_CYLINDER -> ScopeItem.WHEEL_CYLINDER;
            case SHOE_LINING -> ScopeItem.SHOE_SET;
            case PAD -> ScopeItem.PAD_SET;
            case DRUM -> ScopeItem.DRUM;
            case DISC -> ScopeItem.DISC;
            case RETURN_SPRING, HOLD_DOWN -> ScopeItem.HARDWARE_KIT;
            case ADJUSTER -> ScopeItem.ADJUSTER;
            case BACK_PLATE -> ScopeItem.BACK_PLATE;
            case CALLIPER -> ScopeItem.CALLIPER;
            case SLIDE_PIN -> ScopeItem.SLIDE_PIN_KIT;
            case FLEXIBLE_HOSE -> ScopeItem.FLEXIBLE_HOSE;
            case BRAKE_PIPE, PIPE_UNION -> ScopeItem.BRAKE_PIPE;
            case BLEED_NIPPLE -> ScopeItem.BLEED_NIPPLE;
            case MASTER_CYLINDER -> ScopeItem.MASTER_CYLINDER;
            case SERVO -> ScopeItem.SERVO;
            case LOAD_SENSING_VALVE -> ScopeItem.LOAD_SENSING_VALVE;
            case BRAKE_FLUID -> ScopeItem.BRAKE_FLUID;
            case PARKING_CABLE -> ScopeItem.PARKING_CABLE;
            case PARKING_EQUALISER -> ScopeItem.PARKING_EQUALISER;
            case PARKING_LEVER, SHOE_LEVER -> ScopeItem.PARKING_BRAKE;
            case ELECTRIC_PARKING_ACTUATOR -> ScopeItem.PARKING_ACTUATOR;
            case HUB_BEARING -> ScopeItem.HUB_BEARING;
            case HUB_SEAL -> ScopeItem.HUB_SEAL;
            case WHEEL_BOLT -> ScopeItem.WHEEL_BOLT;
            default -> null;
        };
    }

    @Override
    public String shown() {
        return component + " " + condition + " at " + place + " (" + entry.id() + ")";
    }
}

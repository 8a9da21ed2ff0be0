package org.axlecause.facts;

/**
 * A leak on record that no finding after the work has shown to be sound.
 *
 * @param component what leaks
 * @param place where
 * @param because ground
 */
public record StandingLeak(Component component, Place place, Because because) implements Conclusion {

    /** Whether brake fluid is what leaks. */
    public boolean isHydraulic() {
        return component != Component.HUB_SEAL;
    }

    /** The scope item whose renewal ends the leak. */
    public ScopeItem item() {
        return switch (component) {
            case WHEEL_CYLINDER -> ScopeItem.WHEEL_CYLINDER;
            case CALLIPER -> ScopeItem.CALLIPER;
            case FLEXIBLE_HOSE -> ScopeItem.FLEXIBLE_HOSE;
            case BLEED_NIPPLE -> ScopeItem.BLEED_NIPPLE;
            case MASTER_CYLINDER -> ScopeItem.MASTER_CYLINDER;
            case LOAD_SENSING_VALVE -> ScopeItem.LOAD_SENSING_VALVE;
            case HUB_SEAL -> ScopeItem.HUB_SEAL;
            default -> ScopeItem.BRAKE_PIPE;
        };
    }

    @Override
    public String shown() {
        return String.join(", ", because.facts());
    }
}

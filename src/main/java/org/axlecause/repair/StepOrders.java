package org.axlecause.repair;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.axlecause.shared.Recent;

/** Orders of steps, kept a while, since the plans of like repairs hold the same steps. */
final class StepOrders {

    private static final int MOST_KEPT = 1_000;

    private final RepairCatalogue catalogue;
    private final Recent<Set<StepOrder.Key>, Map<StepOrder.Key, List<String>>> kept = new Recent<>(MOST_KEPT);

    StepOrders(RepairCatalogue catalogue) {
        this.catalogue = catalogue;
    }

    /** The steps in their order, each with the ids of the steps that it comes right after. */
    Map<StepOrder.Key, List<String>> of(Set<StepOrder.Key> steps) {
        Map<StepOrder.Key, List<String>> known = kept.find(steps);
        return known == null
                ? kept.keep(Set.copyOf(steps), Collections.unmodifiableMap(new StepOrder(catalogue, steps).ordered()))
                : known;
    }
}

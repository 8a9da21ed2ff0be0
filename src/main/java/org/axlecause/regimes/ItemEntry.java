package org.axlecause.regimes;

import java.util.ArrayList;
import java.util.List;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.DeficiencyClass;
import org.axlecause.facts.DeficiencyCode;
import org.axlecause.facts.InspectedItem;
import org.axlecause.facts.Verified;
import org.axlecause.shared.YamlNode;

/** Items of a regime that its inspector judges without a figure, as written. */
final class ItemEntry {

    /** Deficiencies that only an inspector can judge where a regime has no figure for them. */
    private static final List<DeficiencyCode> JUDGED_BY_EYE = List.of(
            DeficiencyCode.BINDING,
            DeficiencyCode.FORCE_FLUCTUATION,
            DeficiencyCode.ABNORMAL_LAG,
            DeficiencyCode.GRABBING);

    private ItemEntry() {}

    /** The items written, and one without number and class for each deficiency that is judged by eye and not among them. */
    static List<InspectedItem> all(List<YamlNode> nodes, String regime) {
        List<InspectedItem> items = new ArrayList<>();
        nodes.forEach(node -> items.add(of(node)));
        for (DeficiencyCode judged : JUDGED_BY_EYE) {
            if (items.stream().noneMatch(item -> item.deficiency() == judged && item.brake() == BrakeSystem.SERVICE)) {
                items.add(new InspectedItem(judged, BrakeSystem.SERVICE, null, null, Verified.READ, regime));
            }
        }
        return List.copyOf(items);
    }

    private static InspectedItem of(YamlNode node) {
        node.only("deficiency", "brake", "class", "item", "verified", "source");
        BrakeSystem brake = node.optionalCode("brake", BrakeSystem.class);
        return new InspectedItem(
                node.code("deficiency", DeficiencyCode.class),
                brake == null ? BrakeSystem.SERVICE : brake,
                node.optionalCode("class", DeficiencyClass.class),
                node.optionalText("item"),
                node.code("verified", Verified.class),
                node.text("source"));
    }
}

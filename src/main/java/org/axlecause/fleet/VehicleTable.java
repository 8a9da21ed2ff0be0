package org.axlecause.fleet;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.random.RandomGenerator;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.shared.YamlFile;
import org.axlecause.shared.YamlNode;

/** What invented vehicles are made of: ranges and shares, by the name of the value. */
final class VehicleTable {

    private static final String FILE = "fleet/vehicles.yaml";

    private final YamlNode root;
    private final Map<MeasuredQuantity, Range> measures;
    private final Map<String, Range> ranges = new LinkedHashMap<>();
    private final Map<BrakeLayout, Double> front;
    private final Map<BrakeLayout, Double> rear;
    private final Map<ParkingLayout, Double> rearDiscParking;

    private VehicleTable(YamlNode root) {
        this.root = root;
        this.measures = FaultForm.ranges(root.member("measures"), MeasuredQuantity.class);
        this.front = shares("front", BrakeLayout.class);
        this.rear = shares("rear", BrakeLayout.class);
        this.rearDiscParking = shares("rear-disc-parking", ParkingLayout.class);
        for (String name : root.names()) {
            YamlNode member = root.member(name);
            if (member.isMapping()) {
                for (String inner : member.names()) {
                    if (!member.member(inner).isMapping()) {
                        ranges.put(name + "." + inner, Range.read(member.member(inner)));
                    }
                }
            } else if (!List.of("verified", "source").contains(name)) {
                ranges.put(name, Range.read(member));
            }
        }
    }

    static VehicleTable onClassPath() {
        return new VehicleTable(YamlFile.onClassPath(FILE).root());
    }

    Map<BrakeLayout, Double> front() {
        return front;
    }

    Map<BrakeLayout, Double> rear() {
        return rear;
    }

    Map<ParkingLayout, Double> rearDiscParking() {
        return rearDiscParking;
    }

    Range measure(MeasuredQuantity quantity) {
        Range range = measures.get(quantity);
        if (range == null) {
            throw root.member("measures").wrong("'" + quantity + "' has no sound value", "add a pair for it");
        }
        return range;
    }

    /** A value by its name, the inner one behind a point. */
    double value(String name) {
        return range(name).from();
    }

    Range range(String name) {
        Range range = ranges.get(name);
        if (range == null) {
            throw root.wrong("the value '" + name + "' is missing", "add it");
        }
        return range;
    }

    /** From which value a driver speaks of something. */
    double complaintFrom(String complaint) {
        return root.member("complaints").member(complaint).decimal("from").doubleValue();
    }

    /** How often a driver speaks of it. */
    double complaintChance(String complaint) {
        return root.member("complaints").member(complaint).decimal("chance").doubleValue();
    }

    static <E> E pick(Map<E, Double> shares, RandomGenerator random) {
        double drawn = random.nextDouble();
        E last = shares.keySet().iterator().next();
        for (Map.Entry<E, Double> share : shares.entrySet()) {
            last = share.getKey();
            drawn -= share.getValue();
            if (drawn < 0) {
                break;
            }
        }
        return last;
    }

    private <E extends Enum<E>> Map<E, Double> shares(String member, Class<E> keys) {
        YamlNode node = root.member(member);
        Map<E, Double> shares = new EnumMap<>(keys);
        for (String name : node.names()) {
            shares.put(
                    FaultForm.key(node, name, keys), node.member(name).decimal().doubleValue());
        }
        return shares;
    }
}

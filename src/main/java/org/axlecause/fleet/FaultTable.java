package org.axlecause.fleet;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.random.RandomGenerator;
import org.axlecause.facts.Axle;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.Vehicle;
import org.axlecause.shared.YamlFile;
import org.axlecause.shared.YamlNode;

/** The faults that invented vehicles get, with how often; the simulation's own table. */
public final class FaultTable {

    private static final String FILE = "fleet/faults.yaml";

    private final List<FaultKind> kinds;
    private final Map<CauseCode, String> notProduced;
    private final double leastWeight;
    private final int drumOldFrom;
    private final int discOldFrom;
    private final double twoFaults;
    private final double wrongAnswer;

    private FaultTable(YamlNode root) {
        root.only(
                "verified",
                "source",
                "least-weight",
                "old-from",
                "two-faults",
                "wrong-answer",
                "faults",
                "not-produced");
        this.kinds = root.items("faults").stream().map(FaultKind::read).toList();
        this.notProduced = new EnumMap<>(CauseCode.class);
        for (YamlNode item : root.items("not-produced")) {
            notProduced.put(item.only("code", "because").code("code", CauseCode.class), item.text("because"));
        }
        this.leastWeight = root.decimal("least-weight").doubleValue();
        this.drumOldFrom = root.member("old-from").whole("drum");
        this.discOldFrom = root.member("old-from").whole("disc");
        this.twoFaults = root.decimal("two-faults").doubleValue();
        this.wrongAnswer = root.decimal("wrong-answer").doubleValue();
    }

    /** The table that comes with the service. */
    public static FaultTable onClassPath() {
        return new FaultTable(YamlFile.onClassPath(FILE).root());
    }

    /** Causes that the physics can't produce, each with the reason. */
    public Map<CauseCode, String> notProduced() {
        return Map.copyOf(notProduced);
    }

    /** Causes that it draws. */
    public List<CauseCode> produced() {
        return kinds.stream().map(FaultKind::code).sorted().toList();
    }

    List<FaultKind> kinds() {
        return kinds;
    }

    double leastWeight() {
        return leastWeight;
    }

    int drumOldFrom() {
        return drumOldFrom;
    }

    int discOldFrom() {
        return discOldFrom;
    }

    double twoFaults() {
        return twoFaults;
    }

    double wrongAnswer() {
        return wrongAnswer;
    }

    /** A kind of fault and the axle that it was drawn for, by the weights of all kinds on all axles. */
    Drawn draw(Vehicle vehicle, double age, RandomGenerator random) {
        List<Drawn> all = new ArrayList<>();
        List<Double> weights = new ArrayList<>();
        double sum = 0;
        for (Axle axle : vehicle.axles()) {
            for (FaultKind kind : kinds) {
                double weight = kind.weight(vehicle, axle, age, this);
                if (weight > 0) {
                    sum += weight;
                    all.add(new Drawn(kind, axle));
                    weights.add(sum);
                }
            }
        }
        double drawn = random.nextDouble() * sum;
        int index = 0;
        while (weights.get(index) <= drawn && index < all.size() - 1) {
            index++;
        }
        return all.get(index);
    }

    /**
     * What was drawn.
     *
     * @param kind the kind of fault
     * @param axle the axle
     */
    record Drawn(FaultKind kind, Axle axle) {}
}

package org.axlecause.fleet;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.axlecause.shared.YamlFile;
import org.axlecause.shared.YamlNode;

/** How drawn cases are told as events: readings of sound and faulty wheels, what is found, and what tells cases apart. */
final class StoryTable {

    private final YamlNode root;
    private final List<Integer> ages;
    private final List<Integer> kilometres;
    private final List<LocalDate> firstUsed;
    private final List<LocalDate> days;
    private final Map<String, Told> causes = new LinkedHashMap<>();
    private final Map<Integer, Axle> axles = new LinkedHashMap<>();

    private StoryTable(YamlNode root) {
        this.root = root;
        YamlNode apart = root.member("told-apart");
        this.ages = apart.items("ages").stream().map(YamlNode::whole).toList();
        this.kilometres =
                apart.items("kilometres").stream().map(YamlNode::whole).toList();
        this.firstUsed = apart.items("first-used").stream().map(YamlNode::date).toList();
        this.days = apart.items("days").stream().map(YamlNode::date).toList();
        root.items("causes").forEach(cause -> {
            YamlNode test = cause.member("test");
            causes.put(
                    cause.text("code"),
                    new Told(
                            test.text("brake"),
                            test.decimal("peak"),
                            test.decimal("drag"),
                            test.decimal("fluctuation"),
                            cause.items("found").stream().map(YamlNode::toJson).toList(),
                            cause.texts("after")));
        });
        root.items("axles")
                .forEach(
                        axle -> axles.put(axle.whole("number"), new Axle(axle.decimal("force"), axle.decimal("load"))));
    }

    static StoryTable onClassPath() {
        return new StoryTable(YamlFile.onClassPath("fleet/chain-stories.yaml").root());
    }

    /**
     * How a cause shows.
     *
     * @param brake brake that is tested
     * @param peak share of the sound force that the wheel keeps
     * @param drag drag of the wheel, newtons
     * @param fluctuation swing of its force, percent
     * @param found findings at the wheel
     * @param after what is looked at there after the work
     */
    record Told(
            String brake,
            BigDecimal peak,
            BigDecimal drag,
            BigDecimal fluctuation,
            List<JsonNode> found,
            List<String> after) {

        Told {
            found = List.copyOf(found);
            after = List.copyOf(after);
        }
    }

    /** Sound force of a wheel of the axle, newtons, and the load on the axle, kilograms. */
    record Axle(BigDecimal force, BigDecimal load) {}

    Told cause(String code) {
        Told told = causes.get(code);
        if (told == null) {
            throw root.member("causes").wrong("'" + code + "' isn't told", "add how it shows");
        }
        return told;
    }

    Axle axle(int number) {
        Axle axle = axles.get(number);
        if (axle == null) {
            throw root.member("axles").wrong("axle " + number + " has no forces", "add them");
        }
        return axle;
    }

    BigDecimal value(String name) {
        return root.decimal(name);
    }

    /** How many of the values at which a judgement changes a vehicle and its day have reached, by kind. */
    List<Integer> sides(int years, int distance, LocalDate used, LocalDate day) {
        List<Integer> sides = new ArrayList<>();
        sides.add((int) ages.stream().filter(age -> years >= age).count());
        sides.add((int) kilometres.stream().filter(from -> distance >= from).count());
        sides.add((int) firstUsed.stream().filter(from -> !used.isBefore(from)).count());
        sides.add((int) days.stream().filter(from -> !day.isBefore(from)).count());
        return sides;
    }
}

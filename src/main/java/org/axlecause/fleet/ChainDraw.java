package org.axlecause.fleet;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.axlecause.casefile.DrawnCaseStore.Cause;
import org.axlecause.casefile.DrawnCaseStore.Counted;
import org.axlecause.casefile.DrawnCaseStore.Drawn;
import org.axlecause.casefile.DrawnCaseStore.Repair;
import org.axlecause.shared.YamlFile;
import org.axlecause.shared.YamlNode;
import org.jspecify.annotations.Nullable;

/**
 * Draws the cases of an invented chain whose truth is known: vehicles age, winters bring more, sites have vehicles of other
 * ages, one batch of wheel cylinders leaks from a known month on, and one site proves fewer repairs at once.
 */
final class ChainDraw {

    private static final List<Integer> COLD = List.of(11, 12, 1, 2, 3);
    private static final String AT_HOME = "gb-annual";
    private static final double CALIBRATION_BINS = 20;

    private final List<DrawnModel> models;
    private final List<DrawnCause> causes;
    private final List<DrawnCheck> checks;
    private final Map<String, Double> shares = new LinkedHashMap<>();
    private final DrawnBatch batch;
    private final double cureByHabit;
    private final double returnsByHabit;
    private final DrawnSite siteWithHabit;
    private final LocalDate batchFrom;
    private final double[] siteWeights;
    private final Map<String, BigDecimal> prices = new LinkedHashMap<>();
    private final double[] months;
    private final List<DrawnSite> sites;
    private final LocalDate first;
    private final LocalDate end;
    private final Plants plants;
    private final double[] modelWeights;

    /**
     * What is planted.
     *
     * @param batch whether the batch of wheel cylinders is
     * @param habit whether one site has the habit
     */
    record Plants(boolean batch, boolean habit) {}

    /**
     * An invented site.
     *
     * @param code its code
     * @param region its region
     * @param regime its regime
     * @param weight share of the cases, as a weight
     * @param older years that its vehicles are older than elsewhere
     */
    record DrawnSite(String code, String region, String regime, double weight, double older) {

        /** ISO 4217 code of the currency that it asks for. */
        String currency() {
            return regime.equals(AT_HOME) ? "GBP" : "EUR";
        }
    }

    /** An invented model. */
    record DrawnModel(String make, String model, String category, String front, String rear, double weight) {

        boolean hasDrums() {
            return rear.startsWith("drum");
        }
    }

    private record DrawnCause(
            String code,
            boolean onDrum,
            double weight,
            double aging,
            double winter,
            List<String> items,
            @Nullable String with) {

        DrawnCause {
            items = List.copyOf(items);
        }
    }

    private record DrawnCheck(String code, boolean onDrum, double bits, BigDecimal minutes) {}

    private record DrawnBatch(String model, double fromShare, double factor) {}

    ChainDraw(int siteCount, LocalDate first, LocalDate end, Plants plants, long seed) {
        YamlNode table = YamlFile.onClassPath("fleet/chain-draw.yaml").root();
        this.models = table.items("makes").stream()
                .map(model -> new DrawnModel(
                        model.text("make"),
                        model.text("model"),
                        model.text("category"),
                        model.text("front"),
                        model.text("rear"),
                        value(model, "weight")))
                .toList();
        this.causes = table.items("causes").stream()
                .map(cause -> new DrawnCause(
                        cause.text("code"),
                        cause.text("on").equals("drum"),
                        value(cause, "weight"),
                        value(cause, "aging"),
                        value(cause, "winter"),
                        cause.texts("items"),
                        cause.optionalText("with")))
                .toList();
        this.checks = table.items("checks").stream()
                .map(check -> new DrawnCheck(
                        check.text("check"),
                        check.text("on").equals("drum"),
                        value(check, "bits"),
                        check.decimal("minutes")))
                .toList();
        table.names().stream()
                .filter(name -> table.member(name).isScalar())
                .filter(name -> !List.of("verified", "source").contains(name))
                .forEach(name -> shares.put(name, value(table, name)));
        YamlNode planted = table.member("batch");
        this.batch =
                new DrawnBatch(planted.text("model"), value(planted, "from-share-of-time"), value(planted, "factor"));
        this.cureByHabit = value(table.member("habit"), "first-time-cure");
        this.returnsByHabit = value(table.member("habit"), "returned-in-a-year");
        table.items("prices").forEach(price -> prices.put(price.text("item"), price.decimal("price")));
        this.months = table.items("months").stream()
                .mapToDouble(month -> month.decimal().doubleValue())
                .toArray();
        this.first = first;
        this.end = end;
        this.plants = plants;
        this.modelWeights = models.stream().mapToDouble(DrawnModel::weight).toArray();
        this.batchFrom = first.plusDays(Math.round(batch.fromShare() * ChronoUnit.DAYS.between(first, end)))
                .withDayOfMonth(1);
        SplittableRandom chance = new SplittableRandom(seed);
        List<String> regions = table.texts("regions");
        this.sites = IntStream.range(0, siteCount)
                .mapToObj(number -> new DrawnSite(
                        String.format(Locale.ROOT, "site-%03d", number + 1),
                        regions.get(number % regions.size()),
                        number % regions.size() < 3 ? AT_HOME : "eu-periodic",
                        Math.exp(share("site-size-spread") * chance.nextGaussian()),
                        share("site-age-spread") * chance.nextGaussian()))
                .toList();
        this.siteWeights = sites.stream().mapToDouble(DrawnSite::weight).toArray();
        this.siteWithHabit = sites.stream()
                .sorted(Comparator.comparingDouble(DrawnSite::weight))
                .skip(sites.size() / 2)
                .findFirst()
                .orElseThrow();
    }

    private static double value(YamlNode node, String name) {
        return node.decimal(name).doubleValue();
    }

    List<DrawnSite> sites() {
        return sites;
    }

    /** The site with the habit: the one in the middle by size, so that it is neither the largest nor tiny. */
    DrawnSite siteWithHabit() {
        return siteWithHabit;
    }

    /** The day from which the batch was fitted. */
    LocalDate batchFrom() {
        return batchFrom;
    }

    /** The cases of one month, of so many in the whole time. */
    double casesOf(LocalDate month, long all) {
        double sum = 0;
        for (LocalDate each = first; each.isBefore(end); each = each.plusMonths(1)) {
            sum += months[each.getMonthValue() - 1];
        }
        return all * months[month.getMonthValue() - 1] / sum;
    }

    /**
     * A vehicle that comes back to its site after a repair.
     *
     * @param previousCase the case of that repair
     * @param day when it comes
     */
    record Return(
            String previousCase,
            LocalDate day,
            DrawnSite site,
            DrawnModel model,
            int years,
            int kilometres,
            int axle) {}

    /** A case, and the vehicle of it that comes back later; null where none does before the end. */
    record Step(Drawn drawn, @Nullable Return later) {}

    /** One case of a month; the same number and seed give the same case. */
    Step draw(long number, LocalDate month, long seed) {
        SplittableRandom chance = new SplittableRandom(seed * 1_000_003 + number);
        LocalDate day = month.plusDays(chance.nextInt(month.lengthOfMonth()));
        DrawnSite site = sites.get(pick(chance, siteWeights));
        DrawnModel model = models.get(pick(chance, modelWeights));
        int years = (int) Math.max(
                1,
                Math.min(
                        share("oldest"),
                        Math.rint(share("usual-age") + site.older() + share("age-spread") * chance.nextGaussian())));
        int kilometres = (int) Math.min(
                share("most-kilometres"),
                years * share("kilometres-a-year") * Math.exp(share("kilometres-spread") * chance.nextGaussian()));
        DrawnCause root = chance.nextDouble() < share("undetermined") ? null : rootCause(chance, model, years, day, 0);
        int axle = root == null ? 0 : axleOf(root, model, chance);
        return step(chance, number, new Return("", day, site, model, years, kilometres, axle), root);
    }

    /** The case as which a vehicle comes back; something else is wrong with the same axle. */
    Step draw(long number, Return back, long seed) {
        SplittableRandom chance = new SplittableRandom(seed * 1_000_003 + number);
        return step(chance, number, back, rootCause(chance, back.model(), back.years(), back.day(), back.axle()));
    }

    private Step step(SplittableRandom chance, long number, Return vehicle, @Nullable DrawnCause root) {
        DrawnSite site = vehicle.site();
        DrawnModel model = vehicle.model();
        LocalDate day = vehicle.day();
        boolean habit = plants.habit() && site.equals(siteWithHabit);
        List<Cause> found = new ArrayList<>();
        if (root != null) {
            String side = chance.nextBoolean() ? "left" : "right";
            found.add(new Cause(root.code(), vehicle.axle(), side, true));
            String with = root.with();
            if (with != null && chance.nextDouble() < share("contributing")) {
                found.add(new Cause(with, vehicle.axle(), side, false));
            }
        }
        boolean tested = root != null && chance.nextDouble() < share("tested");
        boolean atOnce = tested && chance.nextDouble() < (habit ? cureByHabit : share("first-time-cure"));
        boolean verified = atOnce || (tested && chance.nextDouble() < share("cured-later"));
        List<Counted> counts = outcomes(chance, root != null, tested, atOnce, verified);
        counts.addAll(checks(chance, model));
        counts.addAll(calibration(chance, found));
        List<String> items = root == null ? List.of() : root.items();
        counts.addAll(lines(chance, items, found, site));
        List<Repair> repairs = verified ? List.of(repair(chance, vehicle.axle(), items, day, habit)) : List.of();
        String reference = reference(number);
        LocalDate returned = repairs.isEmpty() ? null : repairs.get(0).returned();
        return new Step(
                new Drawn(
                        reference,
                        site.code(),
                        day,
                        model.make(),
                        model.model(),
                        model.category(),
                        model.front() + "+" + model.rear(),
                        vehicle.years(),
                        vehicle.kilometres(),
                        site.regime(),
                        vehicle.previousCase().isEmpty() ? null : vehicle.previousCase(),
                        found,
                        counts,
                        repairs),
                returned == null ? null : back(reference, vehicle, returned));
    }

    private static String reference(long number) {
        String digits = Long.toString(number);
        return "F-" + "0".repeat(Math.max(0, 9 - digits.length())) + digits;
    }

    private Return back(String reference, Return vehicle, LocalDate day) {
        double years = ChronoUnit.DAYS.between(vehicle.day(), day) / 365.25;
        return new Return(
                reference,
                day,
                vehicle.site(),
                vehicle.model(),
                vehicle.years() + (int) years,
                vehicle.kilometres() + (int) (years * share("kilometres-a-year")),
                vehicle.axle());
    }

    private double share(String name) {
        Double share = shares.get(name);
        if (share == null) {
            throw new IllegalStateException("fleet/chain-draw.yaml has no number `" + name + "`; add it");
        }
        return share;
    }

    /** What is wrong with a vehicle, on one axle or, for axle 0, on any. */
    private DrawnCause rootCause(SplittableRandom chance, DrawnModel model, int years, LocalDate day, int axle) {
        double[] weights = new double[causes.size()];
        for (int index = 0; index < weights.length; index++) {
            DrawnCause cause = causes.get(index);
            weights[index] = !mayBeAt(axle, cause, model)
                    ? 0
                    : cause.weight()
                            * Math.pow(cause.aging(), years - share("weighed-at-age"))
                            * (COLD.contains(day.getMonthValue()) ? cause.winter() : 1);
            if (plants.batch()
                    && cause.code().equals("wheel-cylinder-leaking")
                    && model.model().equals(batch.model())
                    && !day.isBefore(batchFrom)) {
                weights[index] *= batch.factor();
            }
        }
        return causes.get(pick(chance, weights));
    }

    private static boolean mayBeAt(int axle, DrawnCause cause, DrawnModel model) {
        return cause.onDrum() ? model.hasDrums() && axle != 1 : axle != 2 || !model.hasDrums();
    }

    private int axleOf(DrawnCause cause, DrawnModel model, SplittableRandom chance) {
        if (cause.onDrum()) {
            return 2;
        }
        return model.hasDrums() || chance.nextDouble() < share("front-disc") ? 1 : 2;
    }

    private List<Counted> outcomes(
            SplittableRandom chance, boolean determined, boolean tested, boolean atOnce, boolean verified) {
        List<Counted> counts = new ArrayList<>();
        counts.add(outcome(determined ? "determined" : "undetermined"));
        if (tested) {
            counts.add(outcome("tested"));
            counts.add(outcome(verified ? "verified" : "not-cured"));
        }
        if (atOnce) {
            counts.add(outcome("first-time-cure"));
        }
        if (verified && chance.nextDouble() < share("official-known")) {
            counts.add(outcome(chance.nextDouble() < share("official-passed") ? "official-passed" : "official-failed"));
        }
        counts.add(outcome(verified ? "closed-cured" : tested ? "closed-not-cured" : "closed-refused"));
        return counts;
    }

    private static Counted outcome(String code) {
        return new Counted("outcome", code, "", "", "", 0, "", 0, 0, null);
    }

    private List<Counted> checks(SplittableRandom chance, DrawnModel model) {
        List<Counted> counts = new ArrayList<>();
        for (DrawnCheck check : checks) {
            if ((model.hasDrums() || !check.onDrum()) && chance.nextDouble() < share("checked")) {
                double bits = check.bits() * (0.5 + chance.nextDouble());
                counts.add(new Counted(
                        "check",
                        check.code(),
                        chance.nextDouble() < share("asked") ? "asked" : "unasked",
                        "",
                        "answered",
                        0,
                        "",
                        0,
                        0,
                        BigDecimal.valueOf(Math.round(bits * 100), 2)));
                counts.add(new Counted("minutes", check.code(), "", "", "", 0, "", 0, 0, check.minutes()));
            }
        }
        return counts;
    }

    /** Probabilities that come true as often as they say. */
    private static List<Counted> calibration(SplittableRandom chance, List<Cause> found) {
        List<Counted> counts = new ArrayList<>();
        for (String moment : List.of("arrival", "before-opening")) {
            counts.add(new Counted(
                    "told", "", moment, "", found.isEmpty() ? "undetermined" : "determined", 0, "", 0, 0, null));
            if (!found.isEmpty()) {
                int percent = (int) (Math.round(chance.nextDouble() * CALIBRATION_BINS) * 100 / CALIBRATION_BINS);
                String became = chance.nextDouble() * 100 < percent ? "confirmed" : "not-confirmed";
                counts.add(new Counted(
                        "calibration",
                        found.get(0).code(),
                        moment,
                        "",
                        became,
                        0,
                        "",
                        0,
                        percent,
                        BigDecimal.valueOf(percent, 2)));
            }
        }
        return counts;
    }

    private List<Counted> lines(SplittableRandom chance, List<String> items, List<Cause> found, DrawnSite site) {
        List<Counted> counts = new ArrayList<>();
        for (String item : items) {
            boolean agreed = chance.nextDouble() < share("agreed");
            BigDecimal price = prices.getOrDefault(item, BigDecimal.TEN);
            long cents = Math.round(price.doubleValue() * 100 * (1 + share("labour-by-part") * chance.nextDouble()));
            counts.add(new Counted(
                    "line",
                    item,
                    "renew",
                    item.equals(items.get(0)) ? "required" : "recommended",
                    agreed ? "agreed" : chance.nextDouble() < share("refused-not-later") ? "refused" : "later",
                    item.equals("brake-fluid") ? 0 : found.get(0).axle(),
                    site.currency(),
                    1,
                    agreed ? 1 : 0,
                    BigDecimal.valueOf(cents, 2)));
        }
        return counts;
    }

    private Repair repair(SplittableRandom chance, int axle, List<String> items, LocalDate day, boolean habit) {
        double yearly = habit ? returnsByHabit : share("returned-in-a-year");
        double rate = -Math.log(1 - yearly) / 365;
        LocalDate verified = day.plusDays(chance.nextInt(3));
        long after = 1 + Math.round(-Math.log(1 - chance.nextDouble()) / rate);
        LocalDate back = after > 3650 ? null : verified.plusDays(after);
        return new Repair(axle, items, verified, known(back));
    }

    private @Nullable LocalDate known(@Nullable LocalDate returned) {
        return returned == null || !returned.isBefore(end) ? null : returned;
    }

    private static int pick(SplittableRandom chance, double[] weights) {
        double sum = 0;
        for (double weight : weights) {
            sum += weight;
        }
        double at = chance.nextDouble() * sum;
        for (int index = 0; index < weights.length; index++) {
            at -= weights[index];
            if (at < 0) {
                return index;
            }
        }
        return weights.length - 1;
    }
}

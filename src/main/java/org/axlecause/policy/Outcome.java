package org.axlecause.policy;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.LineStanding;
import org.axlecause.judgement.Judgement;
import org.axlecause.judgement.ShownCause;
import org.axlecause.repair.Amount;
import org.axlecause.repair.Estimate;
import org.axlecause.repair.Price;
import org.axlecause.repair.ScopeLine;
import org.axlecause.shared.Json;
import org.jspecify.annotations.Nullable;

/**
 * What counts as the outcome of a case when two policies are compared; grounds and their wording do not. It is taken from a
 * judgement, or from the case document of one.
 *
 * @param necessities how much each line that still counts is called for, by its id
 * @param words all that is compared, in words
 * @param cause code of the root cause that ranks first; {@link #NO_CAUSE} where there is none
 * @param money what the work in the plan costs, net, by currency
 * @param moneyWithRecommended the same with the recommended lines
 */
record Outcome(
        Map<String, String> necessities,
        List<String> words,
        String cause,
        Map<String, BigDecimal> money,
        Map<String, BigDecimal> moneyWithRecommended) {

    static final String NO_CAUSE = "none";

    private static final List<String> GONE = Stream.of(LineStanding.NO_LONGER_NEEDED, LineStanding.MERGED_INTO)
            .map(LineStanding::toString)
            .toList();

    Outcome {
        necessities = Collections.unmodifiableMap(new TreeMap<>(necessities));
        words = List.copyOf(words);
        money = Map.copyOf(money);
        moneyWithRecommended = Map.copyOf(moneyWithRecommended);
    }

    static Outcome of(Judgement judgement) {
        Map<String, String> necessities = new HashMap<>();
        List<String> words = new ArrayList<>();
        for (ScopeLine line : judgement.scope()) {
            if (!GONE.contains(line.standing().toString())) {
                necessities.put(line.id(), line.necessity().toString());
            }
            words.add(String.join(
                    " ",
                    line.id(),
                    line.necessity().toString(),
                    line.standing().toString(),
                    line.extent().toString(),
                    String.valueOf(line.agreementBy()),
                    text(line.awaits()),
                    text(line.estimate())));
        }
        judgement.deficiencies().stream()
                .map(shown -> shown.code() + " " + text(shown.place()) + " " + shown.severity())
                .sorted()
                .forEach(words::add);
        judgement.cautions().forEach(caution -> words.add(caution.code().toString()));
        words.add(judgement.fitness().level().toString());
        words.add(judgement.verification().outcome().toString());
        Estimate total = judgement.estimate();
        return new Outcome(
                necessities,
                words,
                judgement.causes().stream()
                        .filter(ShownCause::root)
                        .filter(shown -> shown.standing() != CauseStanding.RULED_OUT)
                        .findFirst()
                        .map(shown -> shown.code().toString())
                        .orElse(NO_CAUSE),
                net(total),
                net(total == null ? null : total.withRecommended()));
    }

    /** The same from the document of a case, as it is served. */
    static Outcome ofDocument(String document) {
        Map<String, String> members = Json.members(document);
        Map<String, String> necessities = new HashMap<>();
        List<String> words = new ArrayList<>();
        for (JsonNode line : member(members, "scope")) {
            String id = line.path("id").asText();
            String standing = line.path("standing").asText();
            String necessity = line.path("necessity").asText();
            if (!GONE.contains(standing)) {
                necessities.put(id, necessity);
            }
            words.add(String.join(
                    " ",
                    id,
                    necessity,
                    standing,
                    line.path("extent").asText(),
                    line.path("agreementBy").asText(null),
                    text(line.get("awaits")),
                    text(line.get("estimate"))));
        }
        List<String> deficiencies = new ArrayList<>();
        for (JsonNode shown : member(members, "deficiencies")) {
            deficiencies.add(shown.path("code").asText() + " " + text(shown.get("place")) + " "
                    + shown.path("class").asText(null));
        }
        Collections.sort(deficiencies);
        words.addAll(deficiencies);
        for (JsonNode caution : member(members, "cautions")) {
            words.add(caution.path("code").asText());
        }
        words.add(member(members, "fitness").path("level").asText());
        words.add(member(members, "verification").path("outcome").asText());
        JsonNode total = member(members, "estimate");
        return new Outcome(
                necessities,
                words,
                rootCause(member(members, "causes")),
                net(total),
                net(total.path("withRecommended")));
    }

    private static JsonNode member(Map<String, String> members, String name) {
        return Json.read(members.getOrDefault(name, "null"));
    }

    private static String rootCause(JsonNode causes) {
        for (JsonNode cause : causes) {
            if (cause.path("root").asBoolean()
                    && !cause.path("standing").asText().equals(CauseStanding.RULED_OUT.toString())) {
                return cause.path("code").asText();
            }
        }
        return NO_CAUSE;
    }

    private static String text(@Nullable Object value) {
        return value == null ? "" : Json.text(value);
    }

    private static Map<String, BigDecimal> net(@Nullable Estimate estimate) {
        Map<String, BigDecimal> amounts = new TreeMap<>();
        if (estimate != null) {
            Stream.concat(
                            Stream.ofNullable(estimate.net()),
                            Objects.requireNonNullElse(estimate.otherCurrencies(), List.<Price>of()).stream()
                                    .map(Price::net))
                    .map(Amount.class::cast)
                    .forEach(net -> add(amounts, net.currency(), net.amount()));
        }
        return amounts;
    }

    private static Map<String, BigDecimal> net(JsonNode estimate) {
        Map<String, BigDecimal> amounts = new TreeMap<>();
        add(amounts, estimate.path("net"));
        estimate.path("otherCurrencies").forEach(price -> add(amounts, price.path("net")));
        return amounts;
    }

    private static void add(Map<String, BigDecimal> amounts, JsonNode net) {
        if (net.isObject()) {
            add(amounts, net.path("currency").asText(), net.path("amount").asText());
        }
    }

    private static void add(Map<String, BigDecimal> amounts, String currency, String amount) {
        amounts.merge(currency, new BigDecimal(amount), BigDecimal::add);
    }
}

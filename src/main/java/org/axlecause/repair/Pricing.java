package org.axlecause.repair;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.TreeSet;
import javax.money.CurrencyUnit;
import javax.money.Monetary;
import javax.money.MonetaryAmount;
import javax.money.RoundingQueryBuilder;
import org.axlecause.facts.PriceList;
import org.axlecause.facts.ScopeItem;
import org.javamoney.moneta.Money;
import org.jspecify.annotations.Nullable;

/**
 * Prices lines by a site's price list. A price that the list lacks is named as missing and never taken as nothing; amounts
 * of different currencies stand side by side and are never converted.
 */
final class Pricing {

    private final PriceList prices;
    private final CurrencyUnit currency;

    Pricing(PriceList prices) {
        this.prices = prices;
        this.currency = Monetary.getCurrency(prices.currency());
    }

    /** What a line costs with the part that was chosen for it, and with each other part; hours only up to the cap. */
    Estimate of(Operation operation, BigDecimal quantity, @Nullable String chosen, @Nullable BigDecimal hoursAtMost) {
        Tally tally = tally(operation, quantity, chosen, hoursAtMost);
        ScopeItem part = operation.part();
        List<Alternative> others = part == null
                ? List.of()
                : prices.alternativesTo(part).stream()
                        .map(PriceList.Offer::name)
                        .filter(name -> !name.equals(chosen))
                        .map(name -> new Alternative(
                                name,
                                tally(operation, quantity, name, hoursAtMost).rounded()))
                        .toList();
        return estimate(tally.rounded(), tally.hours, tally.missing, chosen, others, null, null);
    }

    /** The sum of estimates, so that the lines add up to it to the last digit. */
    Estimate sum(List<Estimate> estimates, @Nullable Estimate withRecommended) {
        Map<String, Price> sums = new TreeMap<>();
        BigDecimal hours = BigDecimal.ZERO;
        TreeSet<String> missing = new TreeSet<>();
        for (Estimate estimate : estimates) {
            missing.addAll(estimate.missing());
            estimate.prices().forEach(price -> sums.merge(price.net().currency(), price, Pricing::sum));
            BigDecimal lineHours = estimate.hours();
            hours = lineHours == null ? hours : hours.add(lineHours);
        }
        if (missing.isEmpty()) {
            sums.putIfAbsent(currency.getCurrencyCode(), price(Money.zero(currency)));
        }
        return estimate(
                List.copyOf(sums.values()),
                hours,
                List.copyOf(missing),
                null,
                List.of(),
                prices.version(),
                withRecommended);
    }

    private Tally tally(
            Operation operation, BigDecimal quantity, @Nullable String chosen, @Nullable BigDecimal hoursAtMost) {
        Tally tally = new Tally();
        ScopeItem part = operation.part();
        if (part != null) {
            MonetaryAmount price = partPrice(part, chosen);
            if (price == null) {
                tally.missing.add("part " + part + (chosen == null ? "" : " (" + chosen + ")"));
            } else {
                tally.add(price.multiply(quantity));
            }
        }
        if (operation.ownLabour()) {
            BigDecimal usual = prices.hours().get(operation.what().toString());
            tally.hours = usual == null || hoursAtMost == null ? usual : usual.min(hoursAtMost);
            if (tally.hours == null) {
                tally.missing.add("hours " + operation.what());
            } else {
                tally.add(Money.of(prices.hourlyRate(), currency).multiply(tally.hours));
            }
        } else {
            tally.hours = BigDecimal.ZERO;
        }
        if (tally.missing.isEmpty() && tally.exact.isEmpty()) {
            tally.add(Money.zero(currency));
        }
        return tally;
    }

    private @Nullable MonetaryAmount partPrice(ScopeItem part, @Nullable String chosen) {
        if (chosen == null) {
            BigDecimal usual = prices.parts().get(part);
            return usual == null ? null : Money.of(usual, currency);
        }
        return prices.alternativesTo(part).stream()
                .filter(offer -> offer.name().equals(chosen))
                .findFirst()
                .map(offer -> Money.of(
                        offer.price(), Objects.requireNonNullElse(offer.currency(), currency.getCurrencyCode())))
                .orElse(null);
    }

    private Estimate estimate(
            List<Price> found,
            @Nullable BigDecimal hours,
            List<String> missing,
            @Nullable String chosen,
            List<Alternative> alternatives,
            @Nullable Integer version,
            @Nullable Estimate withRecommended) {
        Price own = found.stream().filter(this::isOwn).findFirst().orElse(null);
        List<Price> others = found.stream().filter(price -> !isOwn(price)).toList();
        return new Estimate(
                own == null ? null : own.net(),
                own == null ? null : own.tax(),
                own == null ? null : own.gross(),
                hours == null ? null : plain(hours),
                missing,
                others.isEmpty() ? null : others,
                chosen,
                alternatives.isEmpty() ? null : alternatives,
                version,
                withRecommended);
    }

    private boolean isOwn(Price price) {
        return price.net().currency().equals(currency.getCurrencyCode());
    }

    private Price price(MonetaryAmount exact) {
        MonetaryAmount net = rounded(exact);
        return price(net, rounded(net.multiply(prices.taxRate())));
    }

    private static Price price(MonetaryAmount net, MonetaryAmount tax) {
        return new Price(amount(net), amount(tax), amount(net.add(tax)));
    }

    private static Price sum(Price one, Price other) {
        return price(money(one.net()).add(money(other.net())), money(one.tax()).add(money(other.tax())));
    }

    /** To the digits that its currency has, half up. */
    private static MonetaryAmount rounded(MonetaryAmount exact) {
        return exact.with(Monetary.getRounding(RoundingQueryBuilder.of()
                .setCurrency(exact.getCurrency())
                .set(RoundingMode.HALF_UP)
                .build()));
    }

    private static MonetaryAmount money(Amount amount) {
        return Money.of(new BigDecimal(amount.amount()), amount.currency());
    }

    private static Amount amount(MonetaryAmount money) {
        BigDecimal number = money.getNumber().numberValueExact(BigDecimal.class);
        CurrencyUnit unit = money.getCurrency();
        return new Amount(
                number.setScale(Math.max(0, unit.getDefaultFractionDigits()), RoundingMode.UNNECESSARY)
                        .toPlainString(),
                unit.getCurrencyCode());
    }

    private static BigDecimal plain(BigDecimal hours) {
        BigDecimal stripped = hours.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }

    /** Exact amounts while a line is added up. */
    private final class Tally {

        private final Map<String, MonetaryAmount> exact = new TreeMap<>();
        private final List<String> missing = new ArrayList<>();
        private @Nullable BigDecimal hours;

        private void add(MonetaryAmount amount) {
            exact.merge(amount.getCurrency().getCurrencyCode(), amount, MonetaryAmount::add);
        }

        private List<Price> rounded() {
            return exact.values().stream()
                    .map(Pricing.this::price)
                    .sorted(Comparator.comparing((Price price) -> !isOwn(price))
                            .thenComparing(price -> price.net().currency()))
                    .toList();
        }
    }
}

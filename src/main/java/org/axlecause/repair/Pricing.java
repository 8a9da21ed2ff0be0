package org.axlecause.repair;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import javax.money.CurrencyUnit;
import javax.money.Monetary;
import javax.money.MonetaryAmount;
import javax.money.MonetaryOperator;
import javax.money.RoundingQueryBuilder;
import org.axlecause.facts.PriceList;
import org.axlecause.facts.ScopeItem;
import org.javamoney.moneta.Money;
import org.jspecify.annotations.Nullable;

/** Prices lines by a site's price list; a price that the list lacks is named as missing and never taken as nothing. */
final class Pricing {

    private final PriceList prices;
    private final CurrencyUnit currency;
    private final MonetaryOperator rounding;

    Pricing(PriceList prices) {
        this.prices = prices;
        this.currency = Monetary.getCurrency(prices.currency());
        this.rounding = Monetary.getRounding(RoundingQueryBuilder.of()
                .setCurrency(currency)
                .set(RoundingMode.HALF_UP)
                .build());
    }

    Estimate of(Operation operation, BigDecimal quantity) {
        MonetaryAmount net = Money.zero(currency);
        List<String> missing = new ArrayList<>();
        boolean priced = false;
        ScopeItem part = operation.part();
        if (part != null) {
            BigDecimal price = prices.parts().get(part);
            if (price == null) {
                missing.add("part " + part);
            } else {
                net = net.add(Money.of(price, currency).multiply(quantity));
                priced = true;
            }
        }
        BigDecimal hours =
                operation.ownLabour() ? prices.hours().get(operation.what().toString()) : BigDecimal.ZERO;
        if (hours == null) {
            missing.add("hours " + operation.what());
        } else if (operation.ownLabour()) {
            net = net.add(Money.of(prices.hourlyRate(), currency).multiply(hours));
            priced = true;
        }
        boolean known = priced || missing.isEmpty();
        return known ? taxed(net, hours, missing) : new Estimate(null, null, null, hours, missing, null);
    }

    /** The sum of estimates, so that the lines add up to it to the last digit. */
    Estimate sum(List<Estimate> estimates, @Nullable Estimate withRecommended) {
        MonetaryAmount net = Money.zero(currency);
        MonetaryAmount tax = Money.zero(currency);
        BigDecimal hours = BigDecimal.ZERO;
        TreeSet<String> missing = new TreeSet<>();
        for (Estimate estimate : estimates) {
            missing.addAll(estimate.missing());
            Amount lineNet = estimate.net();
            Amount lineTax = estimate.tax();
            if (lineNet != null && lineTax != null) {
                net = net.add(Money.of(new BigDecimal(lineNet.amount()), currency));
                tax = tax.add(Money.of(new BigDecimal(lineTax.amount()), currency));
            }
            BigDecimal lineHours = estimate.hours();
            hours = lineHours == null ? hours : hours.add(lineHours);
        }
        return new Estimate(
                amount(net), amount(tax), amount(net.add(tax)), plain(hours), List.copyOf(missing), withRecommended);
    }

    private Estimate taxed(MonetaryAmount exact, @Nullable BigDecimal hours, List<String> missing) {
        MonetaryAmount net = exact.with(rounding);
        MonetaryAmount tax = net.multiply(prices.taxRate()).with(rounding);
        return new Estimate(
                amount(net), amount(tax), amount(net.add(tax)), hours == null ? null : plain(hours), missing, null);
    }

    private Amount amount(MonetaryAmount money) {
        BigDecimal number = money.getNumber().numberValueExact(BigDecimal.class);
        return new Amount(
                number.setScale(Math.max(0, currency.getDefaultFractionDigits()), RoundingMode.UNNECESSARY)
                        .toPlainString(),
                currency.getCurrencyCode());
    }

    private static BigDecimal plain(BigDecimal hours) {
        BigDecimal stripped = hours.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }
}

package org.axlecause.casefile;

import jakarta.validation.constraints.Positive;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.axlecause.access.Act;
import org.axlecause.access.ActStore;
import org.axlecause.access.CurrentActor;
import org.axlecause.access.Needs;
import org.axlecause.access.PriceListStore;
import org.axlecause.access.Role;
import org.axlecause.access.Site;
import org.axlecause.access.SiteStore;
import org.axlecause.facts.PriceList;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeItem;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.TenantTransaction;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** The price lists of a tenant's sites; every change is a new version and a case keeps the one of its first decision. */
@Path("/v1/price-lists/{site}")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "administration")
public class PriceListsResource {

    private static final int LONGEST_NAME = 100;

    private final PriceListStore priceLists;
    private final SiteStore sites;
    private final ActStore acts;
    private final CurrentActor actor;
    private final TenantTransaction transaction;

    PriceListsResource(
            PriceListStore priceLists,
            SiteStore sites,
            ActStore acts,
            CurrentActor actor,
            TenantTransaction transaction) {
        this.priceLists = priceLists;
        this.sites = sites;
        this.acts = acts;
        this.actor = actor;
        this.transaction = transaction;
    }

    /**
     * A price list as it is sent and shown; amounts are net of tax in the site's currency.
     *
     * @param version version of the list; given by the service
     * @param currency ISO 4217 code; given by the site
     * @param hourlyRate price of one hour of labour
     * @param taxPercent tax in percent
     * @param parts price of one unit by item
     * @param hours hours of labour by action and item, such as {@code renew shoe-set}
     * @param alternatives other parts that may be taken for an item, by item
     */
    public record PriceListView(
            @Nullable Integer version,
            @Nullable String currency,
            @Nullable BigDecimal hourlyRate,
            @Nullable BigDecimal taxPercent,
            @Nullable Map<String, BigDecimal> parts,
            @Nullable Map<String, BigDecimal> hours,
            @Nullable Map<String, List<OfferView>> alternatives) {

        static PriceListView of(PriceList list) {
            Map<String, BigDecimal> parts = new TreeMap<>();
            list.parts().forEach((item, price) -> parts.put(item.toString(), price));
            return new PriceListView(
                    list.version(),
                    list.currency(),
                    list.hourlyRate(),
                    list.taxRate().movePointRight(2),
                    parts,
                    new TreeMap<>(list.hours()),
                    alternatives(list));
        }

        private static Map<String, List<OfferView>> alternatives(PriceList list) {
            Map<String, List<OfferView>> alternatives = new TreeMap<>();
            for (ScopeItem item : ScopeItem.values()) {
                List<OfferView> offers = list.alternativesTo(item).stream()
                        .map(offer -> new OfferView(offer.name(), offer.price(), offer.currency()))
                        .toList();
                if (!offers.isEmpty()) {
                    alternatives.put(item.toString(), offers);
                }
            }
            return alternatives;
        }
    }

    /**
     * Another part that may be taken for an item.
     *
     * @param name what it is called, unique for its item
     * @param price price of one unit net of tax
     * @param currency ISO 4217 code; left out: the currency of the site
     */
    public record OfferView(
            @Nullable String name,
            @Nullable BigDecimal price,
            @Nullable String currency) {}

    /** Gets a list of a site, the newest where no version is named. */
    @GET
    @Needs({Role.DESK, Role.TECHNICIAN, Role.POLICY, Role.ANALYST})
    @Operation(
            operationId = "getPriceList",
            summary = "Get a price list of a site, the newest one unless a version is named")
    public PriceListView get(
            @PathParam("site") String code, @QueryParam("version") @Nullable @Positive Integer version) {
        return transaction.call(actor.get().tenant(), () -> {
            known(code);
            return (version == null ? priceLists.newest(code) : priceLists.find(code, version))
                    .map(PriceListView::of)
                    .orElseThrow(() -> RefusedException.notFound(
                            version == null
                                    ? "Site '" + code + "' has no price list yet."
                                    : "Site '" + code + "' has no version " + version + " of its price list."));
        });
    }

    /** Adds a version of a site's list. */
    @PUT
    @Consumes(MediaType.APPLICATION_JSON)
    @Needs(Role.ADMIN)
    @Operation(operationId = "putPriceList", summary = "Add the next version of a site's price list")
    public PriceListView put(@PathParam("site") String code, PriceListView sent) {
        return transaction.call(actor.get().tenant(), () -> {
            Site site = known(code);
            PriceList added = priceLists.add(checked(site, sent), actor.get().name());
            acts.note(
                    actor.get().name(), Act.PRICE_LIST_ADDED, code, Map.of("version", String.valueOf(added.version())));
            return PriceListView.of(added);
        });
    }

    private Site known(String code) {
        return sites.find(code)
                .filter(site -> actor.get().maySee(site.site()))
                .orElseThrow(() -> RefusedException.notFound("There is no site '" + code + "'."));
    }

    private static PriceList checked(Site site, @Nullable PriceListView sent) {
        if (sent == null) {
            throw RefusedException.invalidPayload(
                    List.of(new Problem.Cause("", "The body is empty; send hourlyRate, taxPercent, parts and hours.")));
        }
        List<Problem.Cause> causes = new ArrayList<>();
        BigDecimal rate = amount("/hourlyRate", sent.hourlyRate(), causes);
        BigDecimal tax = amount("/taxPercent", sent.taxPercent(), causes);
        if (tax.compareTo(BigDecimal.valueOf(100)) > 0) {
            causes.add(new Problem.Cause("/taxPercent", tax + " is more than 100 percent."));
        }
        Map<ScopeItem, BigDecimal> parts = new EnumMap<>(ScopeItem.class);
        named("/parts", sent.parts(), causes)
                .forEach((name, price) -> Arrays.stream(ScopeItem.values())
                        .filter(item -> item.toString().equals(name))
                        .findFirst()
                        .ifPresentOrElse(
                                item -> parts.put(item, price), () -> causes.add(unknown("/parts/", name, "item"))));
        Map<String, BigDecimal> hours = new TreeMap<>(named("/hours", sent.hours(), causes));
        hours.keySet().stream()
                .filter(Predicate.not(PriceListsResource::isOperation))
                .forEach(name -> causes.add(unknown("/hours/", name, "action and item, such as 'renew shoe-set'")));
        Map<ScopeItem, List<PriceList.Offer>> alternatives = alternatives(sent.alternatives(), causes);
        if (!causes.isEmpty()) {
            throw RefusedException.invalidPayload(causes);
        }
        return new PriceList(site.site(), 0, site.currency(), rate, tax.movePointLeft(2), parts, hours, alternatives);
    }

    private static Map<ScopeItem, List<PriceList.Offer>> alternatives(
            @Nullable Map<String, List<OfferView>> sent, List<Problem.Cause> causes) {
        Map<ScopeItem, List<PriceList.Offer>> alternatives = new EnumMap<>(ScopeItem.class);
        for (Map.Entry<String, List<OfferView>> entry : new TreeMap<>(sent == null ? Map.of() : sent).entrySet()) {
            String pointer = "/alternatives/" + entry.getKey();
            ScopeItem item = Arrays.stream(ScopeItem.values())
                    .filter(known -> known.toString().equals(entry.getKey()))
                    .findFirst()
                    .orElse(null);
            if (item == null) {
                causes.add(unknown("/alternatives/", entry.getKey(), "item"));
                continue;
            }
            List<PriceList.Offer> offers = new ArrayList<>();
            for (@Nullable OfferView offer : entry.getValue() == null ? List.<OfferView>of() : entry.getValue()) {
                if (offer == null) {
                    causes.add(new Problem.Cause(
                            pointer + "/" + offers.size(), "null is no part; expected are its name and price."));
                } else {
                    offers.add(offer(pointer + "/" + offers.size(), offer, causes));
                }
            }
            if (offers.stream().map(PriceList.Offer::name).distinct().count() < offers.size()) {
                causes.add(new Problem.Cause(pointer, "Two parts have one name; give each a name of its own."));
            }
            alternatives.put(item, offers);
        }
        return alternatives;
    }

    private static PriceList.Offer offer(String pointer, OfferView sent, List<Problem.Cause> causes) {
        String name = sent.name() == null ? "" : sent.name().strip();
        if (name.isEmpty() || name.length() > LONGEST_NAME) {
            causes.add(new Problem.Cause(
                    pointer + "/name", "A name of 1 to " + LONGEST_NAME + " characters is expected."));
        }
        String currency = sent.currency();
        if (currency != null && !Currencies.isKnown(currency)) {
            causes.add(new Problem.Cause(
                    pointer + "/currency",
                    "'" + currency + "' is no ISO 4217 currency; expected is a code such as GBP."));
        }
        return new PriceList.Offer(name, amount(pointer + "/price", sent.price(), causes), currency);
    }

    private static Map<String, BigDecimal> named(
            String pointer, @Nullable Map<String, BigDecimal> sent, List<Problem.Cause> causes) {
        Map<String, BigDecimal> named = new TreeMap<>();
        if (sent == null) {
            causes.add(new Problem.Cause(pointer, "A list of names and numbers is expected; it is missing."));
        } else {
            sent.forEach((name, number) -> named.put(name, amount(pointer + "/" + name, number, causes)));
        }
        return named;
    }

    private static BigDecimal amount(String pointer, @Nullable BigDecimal sent, List<Problem.Cause> causes) {
        if (sent == null || sent.signum() < 0) {
            causes.add(new Problem.Cause(pointer, sent + " is no amount; expected is a number of 0 or more."));
            return BigDecimal.ZERO;
        }
        return sent;
    }

    private static Problem.Cause unknown(String pointer, String name, String expected) {
        return new Problem.Cause(
                pointer + name, "'" + name + "' is unknown; expected is the code of an " + expected + ".");
    }

    private static boolean isOperation(String name) {
        return Arrays.stream(ScopeAction.values())
                .anyMatch(
                        action -> Arrays.stream(ScopeItem.values()).anyMatch(item -> name.equals(action + " " + item)));
    }
}

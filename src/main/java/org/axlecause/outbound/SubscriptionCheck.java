package org.axlecause.outbound;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.access.Actor;
import org.axlecause.access.SiteStore;
import org.axlecause.outbound.AddressGuard.RefusedAddressException;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/** Checks what a subscriber asks for and says everything that is wrong at once. */
@ApplicationScoped
class SubscriptionCheck {

    private static final int LONGEST_DESCRIPTION = 200;

    private final AddressGuard guard;
    private final SiteStore sites;
    private final TenantTransaction transaction;

    SubscriptionCheck(AddressGuard guard, SiteStore sites, TenantTransaction transaction) {
        this.guard = guard;
        this.sites = sites;
        this.transaction = transaction;
    }

    /** The terms that were sent, within the sites of the actor; asks for the host of the address, outside a transaction. */
    SubscriptionTerms terms(@Nullable SubscriptionWanted wanted, Actor actor) {
        if (wanted == null) {
            throw RefusedException.invalidPayload(
                    List.of(new Problem.Cause("", "The body is empty; send address, description and types.")));
        }
        List<Problem.Cause> causes = new ArrayList<>();
        SubscriptionTerms terms = new SubscriptionTerms(
                address(wanted.address(), causes),
                description(wanted.description(), causes),
                types(wanted.types(), causes),
                transaction.<@Nullable List<String>>call(actor.tenant(), () -> sites(wanted.sites(), actor, causes)),
                state(wanted.state(), causes));
        if (!causes.isEmpty()) {
            throw RefusedException.invalidPayload(causes);
        }
        return terms;
    }

    private String address(@Nullable String sent, List<Problem.Cause> causes) {
        String address = sent == null ? "" : sent.strip();
        try {
            guard.endpoint(address);
        } catch (RefusedAddressException refused) {
            causes.add(new Problem.Cause(
                    "/address", refused.words() + " Expected is an https address of the public internet."));
        }
        return address;
    }

    private static String description(@Nullable String sent, List<Problem.Cause> causes) {
        String description = sent == null ? "" : sent.strip();
        if (description.isEmpty() || description.length() > LONGEST_DESCRIPTION) {
            causes.add(new Problem.Cause(
                    "/description", "A description of 1 to " + LONGEST_DESCRIPTION + " characters is expected."));
        }
        return description;
    }

    private static List<String> types(@Nullable List<String> sent, List<Problem.Cause> causes) {
        List<String> wanted = sent == null ? List.of() : sent;
        if (wanted.isEmpty()) {
            causes.add(new Problem.Cause("/types", "The list is empty or missing; name at least one of " + all()));
        }
        for (int index = 0; index < wanted.size(); index++) {
            String type = wanted.get(index);
            if (type == null || OutgoingType.of(type).isEmpty()) {
                causes.add(new Problem.Cause(
                        "/types/" + index, "'" + type + "' is no type that is sent; expected is one of " + all()));
            }
        }
        return causes.isEmpty() ? List.copyOf(new TreeSet<>(wanted)) : List.of();
    }

    private static String all() {
        return Stream.of(OutgoingType.values()).map(OutgoingType::toString).collect(Collectors.joining(", ", "", "."));
    }

    private @Nullable List<String> sites(@Nullable List<String> wanted, Actor actor, List<Problem.Cause> causes) {
        Set<String> own = actor.sites();
        if (wanted == null) {
            return own == null ? null : List.copyOf(new TreeSet<>(own));
        }
        if (wanted.isEmpty()) {
            causes.add(new Problem.Cause("/sites", "The list is empty; name a site, or leave it out for all sites."));
        }
        for (int index = 0; index < wanted.size(); index++) {
            String site = wanted.get(index);
            if (site == null || !actor.maySee(site) || sites.find(site).isEmpty()) {
                causes.add(new Problem.Cause("/sites/" + index, "There is no site '" + site + "'."));
            }
        }
        return causes.isEmpty() ? List.copyOf(new TreeSet<>(wanted)) : null;
    }

    private static SubscriptionState state(@Nullable String sent, List<Problem.Cause> causes) {
        SubscriptionState state = sent == null
                ? SubscriptionState.ACTIVE
                : SubscriptionState.of(sent).orElse(null);
        if (state == SubscriptionState.ACTIVE || state == SubscriptionState.STOPPED) {
            return state;
        }
        causes.add(new Problem.Cause("/state", "'" + sent + "' can't be set; expected is active or stopped."));
        return SubscriptionState.STOPPED;
    }
}

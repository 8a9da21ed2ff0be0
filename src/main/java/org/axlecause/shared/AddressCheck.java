package org.axlecause.shared;

import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import org.axlecause.shared.RefusedException.Reason;

/** Refuses addresses that hide the one character that the database can't hold. */
@ApplicationScoped
class AddressCheck {

    private static final int FIRST = -101;

    void register(@Observes Router router) {
        router.route().order(FIRST).handler(AddressCheck::check);
    }

    private static void check(RoutingContext context) {
        if (context.request().uri().contains("%00")) {
            RouterAnswer.refuse(
                    context, Reason.MALFORMED, "The address holds U+0000, which no text here may hold. Leave it out.");
        } else {
            context.next();
        }
    }
}

package org.axlecause.shared;

import io.vertx.core.Future;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpServerResponse;
import io.vertx.ext.web.RoutingContext;
import org.axlecause.shared.RefusedException.Reason;

/** Answers a request with a problem document before it reaches any resource. */
final class RouterAnswer {

    private static final String RETRY_SECONDS = "2";

    private RouterAnswer() {}

    /** Refuses the request; the future succeeds when the answer was sent. */
    static Future<Void> refuse(RoutingContext context, Reason reason, String detail) {
        Problem problem = RefusedException.because(reason, detail)
                .problem()
                .about(context.request().path());
        HttpServerResponse response = context.response()
                .setStatusCode(problem.status())
                .putHeader(HttpHeaders.CONTENT_TYPE, Problem.MEDIA_TYPE);
        if (reason == Reason.UNAVAILABLE) {
            response.putHeader(HttpHeaders.RETRY_AFTER, RETRY_SECONDS);
        }
        return response.end(Json.text(problem));
    }

    /** Refuses the request unread; its connection can't be used again. */
    static void refuseUnread(RoutingContext context, Reason reason, String detail) {
        context.response().putHeader(HttpHeaders.CONNECTION, "close");
        refuse(context, reason, detail)
                .onComplete(sent -> context.request().connection().close());
    }
}

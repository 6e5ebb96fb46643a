using System;

Console.Error.WriteLine("loggerbox: no verb yet");
return 2;

using System;
using System.IO;
using LoggerBox.BoardParts.Plans;
using LoggerBox.Protocol.Records;

namespace LoggerBox.BoardEsp32
{
    /// <summary>Plans that lie on the card as D:\plans\*.plan: taken over into the logger's own at the start.</summary>
    internal static class CardPlans
    {
        private const string Folder = "D:\\plans";

        public static void TakeOver(PlanShelf shelf)
        {
            try
            {
                if (!Directory.Exists(Folder))
                {
                    return;
                }

                string[] files = Directory.GetFiles(Folder);
                for (int i = 0; i < files.Length; i++)
                {
                    Take(files[i], shelf);
                }
            }
            catch (Exception)
            {
                Console.WriteLine("The plans on the card could not be read; the logger keeps its own.");
            }
        }

        private static void Take(string file, PlanShelf shelf)
        {
            PlanRecord plan = new PlanRecord();
            byte[] bytes = File.ReadAllBytes(file);
            bool isTaken = file.EndsWith(PlanFile.Ending) && PlanFile.TryRead(bytes, bytes.Length, plan) && shelf.Put(plan) > 0;
            Console.WriteLine(file + (isTaken ? " taken" : " is no plan, outside its bounds, or there is no room for it"));
        }
    }
}
